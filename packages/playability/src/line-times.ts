import type { Line } from '@reedplate/line';
import { requireNotes } from '@reedplate/line';
import { secondsPerTick } from './moments.js';

/** Air is counted in steps, so many to a second of single-note playing. */
export const STEPS_PER_SECOND = 10;

/** The moments of a line in the figures a search runs on, one entry a moment. */
export interface LineTimes {
  readonly count: number;
  /** Index into `sets`. */
  readonly set: Int32Array;
  /** The distinct sets of pitches, each rising. */
  readonly sets: readonly (readonly number[])[];
  /** Moments that have each set. */
  readonly setCounts: readonly number[];
  /** Seconds from the onset before. */
  readonly since: Float64Array;
  /** Seconds held. */
  readonly held: Float64Array;
  /** Air steps held, and rested before. Counted on a grid, so that long stretches add up. */
  readonly heldSteps: Int32Array;
  readonly restSteps: Int32Array;
}

/**
 * Reads the times of a line: the same moments as `momentsOf`, without an object for each.
 *
 * @throws ReedplateError `LINE_EMPTY`, `NUMBER_RANGE`
 */
export function lineTimes(line: Line, tempo?: number): LineTimes {
  const { notes } = requireNotes(line);
  const size = notes.length;
  const perTick = secondsPerTick(line, tempo);
  const set = new Int32Array(size);
  const since = new Float64Array(size);
  const held = new Float64Array(size);
  const heldSteps = new Int32Array(size);
  const restSteps = new Int32Array(size);
  const sets = pitchSets();
  let count = 0;
  let startBefore = 0;
  let stepBefore = 0;
  for (let first = 0, next = 0; first < size; first = next, count += 1) {
    const start = notes[first]?.start ?? 0;
    let end = 0;
    for (; notes[next]?.start === start; next += 1) {
      end = Math.max(end, start + (notes[next]?.duration ?? 0));
    }
    end = Math.min(end, notes[next]?.start ?? end);
    set[count] = sets.indexOf(notes, first, next);
    since[count] = (start - startBefore) * perTick;
    held[count] = (end - start) * perTick;
    const startStep = Math.round(start * perTick * STEPS_PER_SECOND);
    const endStep = Math.round(end * perTick * STEPS_PER_SECOND);
    restSteps[count] = startStep - stepBefore;
    heldSteps[count] = endStep - startStep;
    startBefore = start;
    stepBefore = endStep;
  }
  return { count, set, ...sets.found, since, held, heldSteps, restSteps };
}

/** Numbers the distinct sets of pitches as they come; single pitches without making text of them. */
function pitchSets() {
  const sets: (readonly number[])[] = [];
  const setCounts: number[] = [];
  const ofPitch = new Int32Array(128).fill(-1);
  const ofChord = new Map<string, number>();
  const add = (pitches: readonly number[]): number => {
    setCounts.push(0);
    return sets.push(pitches) - 1;
  };
  const indexOfPitch = (pitch: number): number => {
    const known = ofPitch[pitch] ?? -1;
    if (known >= 0) return known;
    ofPitch[pitch] = add([pitch]);
    return ofPitch[pitch] ?? -1;
  };
  const indexOfChord = (notes: Line['notes'], first: number, next: number): number => {
    const pitches = [...new Set(notes.slice(first, next).map(({ pitch }) => pitch))];
    if (pitches.length === 1) return indexOfPitch(pitches[0] as number);
    const name = pitches.join(' ');
    const index = ofChord.get(name) ?? add(pitches);
    ofChord.set(name, index);
    return index;
  };
  return {
    found: { sets, setCounts },
    indexOf(notes: Line['notes'], first: number, next: number): number {
      const single = next === first + 1;
      const index = single
        ? indexOfPitch(notes[first]?.pitch ?? 0)
        : indexOfChord(notes, first, next);
      setCounts[index] = (setCounts[index] ?? 0) + 1;
      return index;
    },
  };
}

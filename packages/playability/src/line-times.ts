import { type Line, requireNotes } from '@reedplate/line';
import { secondsPerTick } from './moments.js';
import { type PitchSets, setOf, startSets } from './pitch-sets.js';

/** Air is counted in steps, so many to a second of single-note playing. */
export const STEPS_PER_SECOND = 10;

/** The moments of a line in the figures a search runs on, one entry a moment. */
export interface LineTimes extends Pick<PitchSets, 'sets' | 'setCounts'> {
  readonly count: number;
  /** Index into `sets`. */
  readonly set: Int32Array;
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
  const pitchSets = startSets();
  let count = 0;
  let startBefore = 0;
  let stepBefore = 0;
  for (let first = 0; first < size; count += 1) {
    const { start, duration } = notes[first] as Line['notes'][number];
    let next = first + 1;
    let end = start + duration;
    while (notes[next]?.start === start) {
      end = Math.max(end, start + (notes[next]?.duration ?? 0));
      next += 1;
    }
    end = Math.min(end, notes[next]?.start ?? end);
    set[count] = setOf(pitchSets, notes, first, next);
    since[count] = (start - startBefore) * perTick;
    held[count] = (end - start) * perTick;
    const startStep = Math.round(start * perTick * STEPS_PER_SECOND);
    const endStep = Math.round(end * perTick * STEPS_PER_SECOND);
    restSteps[count] = startStep - stepBefore;
    heldSteps[count] = endStep - startStep;
    startBefore = start;
    stepBefore = endStep;
    first = next;
  }
  const { sets, setCounts } = pitchSets;
  return { count, set, sets, setCounts, since, held, heldSteps, restSteps };
}

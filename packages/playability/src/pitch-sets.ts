import type { TimedNote } from '@reedplate/line';
import { itemAt } from '@reedplate/pitch';

/** The distinct sets of pitches of a line, numbered as they come. */
export interface PitchSets {
  /** Each rising, each pitch once. */
  readonly sets: (readonly number[])[];
  /** Events that have each set. */
  readonly setCounts: number[];
  /** Number of the set of one pitch, plus 1; 0 where it has none yet. */
  readonly ofPitch: number[];
  readonly ofChord: Map<string, number>;
}

/** No sets yet. */
export function startSets(): PitchSets {
  return { sets: [], setCounts: [], ofPitch: new Array<number>(128).fill(0), ofChord: new Map() };
}

/** The number of the set of the notes from `first` to before `next`, counted once more. */
export function setOf(
  found: PitchSets,
  notes: readonly TimedNote[],
  first: number,
  next: number,
): number {
  const { pitch } = notes[first] as TimedNote;
  const set =
    next === first + 1 ? setOfPitch(found, pitch) : setOfChord(found, notes.slice(first, next));
  found.setCounts[set] = (found.setCounts[set] ?? 0) + 1;
  return set;
}

function setOfPitch({ sets, ofPitch }: PitchSets, pitch: number): number {
  const known = itemAt(ofPitch, pitch);
  if (known > 0) return known - 1;
  const set = sets.push([pitch]);
  ofPitch[pitch] = set;
  return set - 1;
}

function setOfChord(found: PitchSets, notes: readonly TimedNote[]): number {
  const pitches = [...new Set(notes.map(({ pitch }) => pitch))];
  const [pitch] = pitches;
  if (pitches.length === 1 && pitch !== undefined) return setOfPitch(found, pitch);
  const name = pitches.join(' ');
  const set = found.ofChord.get(name) ?? found.sets.push(pitches) - 1;
  found.ofChord.set(name, set);
  return set;
}

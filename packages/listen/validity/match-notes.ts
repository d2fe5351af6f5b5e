import type { NoteInSeconds } from '@reedplate/line';

const ONSET = 0.05;
const CENTS = 50;

/** Notes found, notes that are there, and pairs of both. */
export interface Matched {
  readonly found: number;
  readonly there: number;
  readonly pairs: readonly (readonly [NoteInSeconds, NoteInSeconds])[];
}

/**
 * Pairs of true and heard notes, one to one and as many as there can be: onsets within 50 ms, pitches within 50
 * cents, and where asked ends within 20 % of the note or 50 ms (Raffel et al., mir_eval, ISMIR 2014, transcription).
 */
export function matchNotes(
  truth: readonly NoteInSeconds[],
  heard: readonly NoteInSeconds[],
  withEnds = false,
): Matched {
  const partnerOf = new Map<number, number>();
  const near = truth.map((note) =>
    heard.flatMap((other, at) => (isNear(note, other, withEnds) ? [at] : [])),
  );
  const place = (index: number, tried: Set<number>): boolean => {
    for (const at of near[index] ?? []) {
      if (tried.has(at)) continue;
      tried.add(at);
      const holder = partnerOf.get(at);
      if (holder === undefined || place(holder, tried)) {
        partnerOf.set(at, index);
        return true;
      }
    }
    return false;
  };
  for (const index of truth.keys()) place(index, new Set());
  const pairs = [...partnerOf].map(
    ([at, index]) => [truth[index], heard[at]] as [NoteInSeconds, NoteInSeconds],
  );
  return { found: heard.length, there: truth.length, pairs };
}

function isNear(note: NoteInSeconds, other: NoteInSeconds, withEnds: boolean): boolean {
  if (Math.abs(note.start - other.start) > ONSET || Math.abs(centsBetween(note, other)) > CENTS)
    return false;
  if (!withEnds) return true;
  const [end, otherEnd] = [note.start + note.duration, other.start + other.duration];
  return Math.abs(end - otherEnd) <= Math.max(ONSET, note.duration / 5);
}

/** Cents that the second is heard above the first. */
export function centsBetween(note: NoteInSeconds, other: NoteInSeconds): number {
  return 100 * (other.pitch - note.pitch) + (other.cents ?? 0) - (note.cents ?? 0);
}

/** Harmonic mean of the shares found and right, over several takes taken together. */
export function f1Of(matched: readonly Matched[]): number {
  const sum = (of: (each: Matched) => number): number =>
    matched.reduce((all, each) => all + of(each), 0);
  return (
    (2 * sum(({ pairs }) => pairs.length)) / (sum(({ found }) => found) + sum(({ there }) => there))
  );
}

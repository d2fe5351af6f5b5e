import type { NoteClass } from './note-class.js';

/** Widest move that counts as a step, in semitones. */
export const STEP = 2;

/**
 * What a resolved note outside the chord is called, by how it was reached: stepped to and left in
 * the same direction, a passing note; left to where it came from, a neighbour; else an approach.
 */
export function resolvedFigure(
  before: number | undefined,
  pitch: number,
  target: number,
): NoteClass {
  if (before === undefined) return 'approach';
  if (before === target) return 'neighbour';
  const reached = pitch - before;
  const isStep = reached !== 0 && Math.abs(reached) <= STEP;
  const isOnward = Math.sign(reached) === Math.sign(target - pitch);
  return isStep && isOnward ? 'passing' : 'approach';
}

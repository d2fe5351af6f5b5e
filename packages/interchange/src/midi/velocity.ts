import type { TimedNote } from '@reedplate/line';
import type { PiecePart } from '../piece.js';
import { HARMONICA_PROGRAM } from './melody-clues.js';

const TUNE_VELOCITY = 96;
const BACKING_VELOCITY = 72;

/** Velocity of notes that say none: a harmonica stands out before the other parts. */
export function usualVelocity({ program, percussion }: Omit<PiecePart, 'line'>): number {
  const isTune = percussion !== true && program === HARMONICA_PROGRAM;
  return isTune ? TUNE_VELOCITY : BACKING_VELOCITY;
}

/**
 * The notes of a part that was read: where all have the velocity of notes that say none, none says one.
 */
export function withoutUsualVelocity(
  notes: readonly TimedNote[],
  usual: number,
): readonly TimedNote[] {
  if (notes.some(({ velocity }) => velocity !== usual)) return notes;
  return notes.map(({ velocity: _, ...note }) => note);
}

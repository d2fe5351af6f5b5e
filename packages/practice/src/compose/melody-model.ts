import { itemAt, toPitchClass } from '@reedplate/pitch';
import { LEARNED_MAJOR, LEARNED_MINOR } from './learned-weights.js';
import type { LearnedWeights } from './read-weights.js';

/** What a melody likes to do: weights, each from 0 up, of which only the proportions count. */
export interface MelodyModel {
  /**
   * Weight of a degree after a degree, both in semitones above the tonic: 12 rows of 12. Of each row
   * the shares count. At the beginning of a phrase the row of the tonic counts.
   */
  readonly transitions: readonly (readonly number[])[];
  /**
   * Weight of a leap by its semitones, up or down, from 0; a wider one counts as the last. It tells from
   * which side a degree is reached.
   */
  readonly leaps: readonly number[];
  /** By how much a tone of the chord is likelier than another note, 1 or more. */
  readonly chordTone: number;
}

/**
 * By how much a tone of the chord is likelier than another note, where nothing is said. Our own choice:
 * with 1, where the degrees alone decide, a third of the choruses scored less than the middle of real solos.
 */
export const USUAL_CHORD_TONE = 3;

/**
 * The model over a song in major where none is given: learned from the melodies of our own catalogue of
 * phrases, by {@link learnMelody}.
 */
export const DEFAULT_MELODY_MODEL: MelodyModel = /* @__PURE__ */ modelOf(LEARNED_MAJOR);

/** The same over a song in minor. */
export const MINOR_MELODY_MODEL: MelodyModel = /* @__PURE__ */ modelOf(LEARNED_MINOR);

function modelOf(learned: LearnedWeights): MelodyModel {
  return Object.freeze({ ...learned, chordTone: USUAL_CHORD_TONE });
}

/**
 * Weight of a pitch after another; `before` is `undefined` where a phrase begins. A degree is reached
 * from below or from above: of its weight each way has the share that leaps of this width have.
 */
export function melodyWeight(
  { transitions, leaps }: MelodyModel,
  tonic: number,
  before: number | undefined,
  pitch: number,
): number {
  const row = itemAt(transitions, before === undefined ? 0 : toPitchClass(before - tonic));
  // A share of its row: that a degree is common makes what follows it no likelier.
  const liking = shareOf(itemAt(row, toPitchClass(pitch - tonic)), row);
  if (before === undefined) return liking;
  const weightOf = (leap: number): number => itemAt(leaps, Math.min(leap, leaps.length - 1));
  const up = toPitchClass(pitch - before);
  const ways = weightOf(up) + weightOf(12 - up);
  return ways === 0 ? 0 : (liking * weightOf(Math.abs(pitch - before))) / ways;
}

function shareOf(weight: number, all: readonly number[]): number {
  return weight === 0 ? 0 : weight / all.reduce((sum, each) => sum + each, 0);
}

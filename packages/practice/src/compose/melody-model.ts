import { toPitchClass } from '@reedplate/pitch';

/** What a melody likes to do: weights, each from 0 up, of which only the proportions count. */
export interface MelodyModel {
  /**
   * Weight of a degree after a degree, both in semitones above the tonic: 12 rows of 12. At the
   * beginning of a phrase the row of the tonic counts.
   */
  readonly transitions: readonly (readonly number[])[];
  /** Weight of a leap by its semitones, up or down, from 0; a wider one counts as the last. */
  readonly leaps: readonly number[];
  /** By how much a tone of the chord is likelier than another note, 1 or more. */
  readonly chordTone: number;
}

/** How much a blues melody likes each degree: the blues scale, then the chord of the tonic. */
const LIKING = Object.freeze([6, 0.05, 1, 5, 2.5, 4, 1.5, 5.5, 0.2, 1.5, 4, 0.2] as const);

/** Steps and thirds before leaps. */
const LEAPS = Object.freeze([1.5, 3, 5, 4, 2, 1.5, 0.3, 0.8, 0.3, 0.3, 0.2, 0.1, 0.3] as const);

/**
 * The model where none is given. The weights are our own choice: the blues scale on the tonic in front,
 * steps before leaps.
 */
export const DEFAULT_MELODY_MODEL: MelodyModel = Object.freeze({
  transitions: Object.freeze(LIKING.map(() => LIKING)),
  leaps: LEAPS,
  chordTone: 2,
});

/** Weight of a pitch after another; `before` is `undefined` where a phrase begins. */
export function melodyWeight(
  { transitions, leaps }: MelodyModel,
  tonic: number,
  before: number | undefined,
  pitch: number,
): number {
  const row = transitions[before === undefined ? 0 : toPitchClass(before - tonic)];
  const liking = row?.[toPitchClass(pitch - tonic)] ?? 0;
  if (before === undefined) return liking;
  return liking * (leaps[Math.abs(pitch - before)] ?? leaps.at(-1) ?? 0);
}

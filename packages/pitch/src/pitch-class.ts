import { requireInteger } from './guard.js';

/** One of the twelve pitch classes; C is 0, B is 11. */
export type PitchClass = 0 | 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9 | 10 | 11;

/** All pitch classes, C first. */
export const PITCH_CLASSES: readonly PitchClass[] = /* @__PURE__ */ Object.freeze([
  0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11,
]);

/**
 * The pitch class of a MIDI number, or of any whole number of semitones above C, negative too.
 *
 * @throws ReedplateError `NUMBER_RANGE` for what is no whole number
 * @example
 * ```ts
 * import { toPitchClass } from '@reedplate/pitch';
 *
 * toPitchClass(67); // => 7
 * toPitchClass(-1); // => 11
 * toPitchClass(0.5); // throws NUMBER_RANGE
 * ```
 */
export function toPitchClass(semitones: number): PitchClass {
  if (!Number.isSafeInteger(semitones)) requireInteger(semitones, { what: 'semitones' });
  return (((semitones % 12) + 12) % 12) as PitchClass;
}

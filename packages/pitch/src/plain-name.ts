import type { NoteName } from './note-name.js';
import { type PitchClass, toPitchClass } from './pitch-class.js';

/** The twelve notes as harps and tuners are labelled, C first: F# and flats. Common practice. */
export const PLAIN_NAMES = [
  'C',
  'Db',
  'D',
  'Eb',
  'E',
  'F',
  'F#',
  'G',
  'Ab',
  'A',
  'Bb',
  'B',
] as const satisfies readonly NoteName[];

/**
 * The usual name of a pitch class outside any key: F# and flats.
 *
 * @throws ReedplateError `NUMBER_RANGE`
 * @example
 * ```ts
 * import { plainName } from '@reedplate/pitch';
 *
 * plainName(6); // => 'F#'
 * plainName(10); // => 'Bb'
 * ```
 */
export function plainName(pitchClass: PitchClass): NoteName {
  return PLAIN_NAMES[toPitchClass(pitchClass)];
}

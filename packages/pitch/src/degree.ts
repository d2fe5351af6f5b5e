import { type PitchClass, toPitchClass } from './pitch-class.js';

/** Degrees above a tonic as blues players name the twelve semitones. */
export const SCALE_DEGREES = /* @__PURE__ */ Object.freeze([
  '1',
  'b2',
  '2',
  'b3',
  '3',
  '4',
  'b5',
  '5',
  'b6',
  '6',
  'b7',
  '7',
] as const);

/** Degree of a note above the tonic of a key: `b3`, `5`, `b7`. */
export type ScaleDegree = (typeof SCALE_DEGREES)[number];

/**
 * The degree of a pitch class above a tonic, both 0 to 11.
 *
 * @throws ReedplateError `NUMBER_RANGE` for what is no whole number
 * @example
 * ```ts
 * import { degreeAbove } from '@reedplate/pitch';
 *
 * degreeAbove(5, 7); // => 'b7'
 * ```
 */
export function degreeAbove(pitchClass: PitchClass, tonic: PitchClass): ScaleDegree {
  return SCALE_DEGREES[toPitchClass(toPitchClass(pitchClass) - toPitchClass(tonic))] as ScaleDegree;
}

/** Degrees above the root of a chord, extensions named as extensions. */
export type ChordDegree =
  | '1'
  | '2'
  | 'b3'
  | '3'
  | '4'
  | 'b5'
  | '5'
  | '#5'
  | 'b6'
  | '6'
  | 'bb7'
  | 'b7'
  | '7'
  | 'b9'
  | '9'
  | '#9'
  | '11'
  | '#11'
  | 'b13'
  | '13';

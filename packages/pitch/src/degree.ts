import { type PitchClass, toPitchClass } from './pitch-class.js';

/** Degrees above a tonic as blues players name the twelve semitones. */
export const SCALE_DEGREES = Object.freeze([
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
 * The degree of a pitch class above a tonic.
 *
 * @example
 * ```ts
 * import { degreeAbove } from '@reedplate/pitch';
 *
 * degreeAbove(5, 7); // => 'b7'
 * ```
 */
export function degreeAbove(pitchClass: PitchClass, tonic: PitchClass): ScaleDegree {
  return SCALE_DEGREES[toPitchClass(pitchClass - tonic)] as ScaleDegree;
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

/** Letter quality of an interval name (`3m`, `5d`, `9A`) as a sign before its number. */
const SIGNS: ReadonlyMap<string, string> = new Map([
  ['P', ''],
  ['M', ''],
  ['m', 'b'],
  ['A', '#'],
  ['d', 'b'],
]);

/**
 * The chord degree of an interval name as tonal writes it: `3m` is `b3`, `7d` is `bb7`.
 * A tenth in a chord of fourths is a third an octave up, so `10m` is `b3`.
 */
export function degreeOfInterval(interval: string): ChordDegree {
  const quality = interval.slice(-1);
  const number = Number.parseInt(interval, 10);
  if (interval === '7d') return 'bb7';
  return `${SIGNS.get(quality) ?? ''}${number === 10 ? 3 : number}` as ChordDegree;
}

import { deepFreeze, requireInteger } from '@reedplate/pitch';
import type { Position, PositionNumber } from './position.js';

/**
 * The twelve positions. Numbering: "Squaring the circle of 5ths", and a letter to the harmonica
 * list, July 1994. Modes: the same article, and a letter of March 2012. `Straight harp` and `cross harp`: Wikibooks,
 * "Harmonica/Positions"; `slant harp`: common practice.
 */
export const POSITIONS: readonly Position[] = /* @__PURE__ */ deepFreeze([
  { number: 1, ordinal: '1st', tradeName: 'straight harp', semitones: 0, mode: 'ionian' },
  { number: 2, ordinal: '2nd', tradeName: 'cross harp', semitones: 7, mode: 'mixolydian' },
  { number: 3, ordinal: '3rd', tradeName: 'slant harp', semitones: 2, mode: 'dorian' },
  { number: 4, ordinal: '4th', semitones: 9, mode: 'aeolian' },
  { number: 5, ordinal: '5th', semitones: 4, mode: 'phrygian' },
  { number: 6, ordinal: '6th', semitones: 11, mode: 'locrian' },
  { number: 7, ordinal: '7th', semitones: 6 },
  { number: 8, ordinal: '8th', semitones: 1 },
  { number: 9, ordinal: '9th', semitones: 8 },
  { number: 10, ordinal: '10th', semitones: 3 },
  { number: 11, ordinal: '11th', semitones: 10 },
  { number: 12, ordinal: '12th', semitones: 5, mode: 'lydian' },
]);

/**
 * A position by its number.
 *
 * @param number 1 to 12
 * @throws ReedplateError `NUMBER_RANGE`
 * @example
 * ```ts
 * import { positionByNumber } from '@reedplate/position';
 *
 * positionByNumber(2).tradeName; // => 'cross harp'
 * positionByNumber(13); // throws NUMBER_RANGE
 * ```
 */
export function positionByNumber(number: number): Position {
  const checked = requireInteger(number, { min: 1, max: 12, what: 'a position' });
  return POSITIONS[checked - 1] as Position;
}

/**
 * The position in which `then` played on top of `first` lands: positions add up like the fifths
 * they count, 1st leaving all as it is.
 *
 * @throws ReedplateError `NUMBER_RANGE`
 * @example
 * ```ts
 * import { composePositions } from '@reedplate/position';
 *
 * composePositions(2, 2); // => 3
 * composePositions(2, 12); // => 1
 * ```
 */
export function composePositions(first: number, then: number): PositionNumber {
  const fifths = positionByNumber(first).number - 1 + positionByNumber(then).number - 1;
  return ((fifths % 12) + 1) as PositionNumber;
}

/**
 * The greatest common divisor of two whole numbers from 0: what lengths in ticks, written as
 * fractions of a beat, are reduced by.
 *
 * @internal
 * @example
 * ```ts
 * import { commonDivisor } from '@reedplate/line';
 *
 * commonDivisor(1440, 960); // => 480
 * commonDivisor(960, 0); // => 960
 * ```
 */
export function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}

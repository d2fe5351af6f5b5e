/** How {@link frequency} tunes. */
export interface FrequencyOptions {
  /** Frequency of A4 in Hz; default 440. */
  readonly a4?: number;
}

/**
 * The equal-tempered frequency of a pitch in Hz.
 *
 * @param pitch MIDI number; fractions are parts of a semitone
 * @example
 * ```ts
 * import { frequency } from '@reedplate/pitch';
 *
 * frequency(69); // => 440
 * frequency(57, { a4: 442 }); // => 221
 * ```
 */
export function frequency(pitch: number, { a4 = 440 }: FrequencyOptions = {}): number {
  return a4 * 2 ** ((pitch - 69) / 12);
}

/**
 * Cents from one frequency up to another, both in Hz and above zero.
 *
 * @example
 * ```ts
 * import { centsBetween } from '@reedplate/pitch';
 *
 * centsBetween(220, 440); // => 1200
 * ```
 */
export function centsBetween(lower: number, upper: number): number {
  return 1200 * Math.log2(upper / lower);
}

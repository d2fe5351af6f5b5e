import { ReedplateError } from './error.js';
import { requirePositive } from './guard.js';
import { type OptionNames, requireOptions } from './options.js';
import { logOfTwo, powerOfTwo } from './two-power.js';

/** How {@link frequency} tunes. */
export interface FrequencyOptions {
  /** Frequency of A4 in Hz, above 0; default 440, the standard tuning frequency (ISO 16:1975). */
  readonly a4?: number;
}

const FREQUENCY_OPTIONS: OptionNames<FrequencyOptions> = { a4: true };
const A4 = { what: 'the frequency of A4 in Hz' };
const HERTZ = { what: 'a frequency in Hz' };

/**
 * The equal-tempered frequency of a pitch in Hz, to the same bit on every engine.
 *
 * @param pitch MIDI number, any finite number; fractions are parts of a semitone
 * @throws ReedplateError `NUMBER_RANGE`
 * @example
 * ```ts
 * import { frequency } from '@reedplate/pitch';
 *
 * frequency(69); // => 440
 * frequency(57, { a4: 442 }); // => 221
 * frequency(69, { a4: 0 }); // throws NUMBER_RANGE
 * ```
 */
export function frequency(pitch: number, options: FrequencyOptions = {}): number {
  const { a4 = 440 } = requireOptions(options, FREQUENCY_OPTIONS, 'frequency');
  if (!Number.isFinite(pitch)) {
    throw new ReedplateError({
      code: 'NUMBER_RANGE',
      value: pitch,
      expected: 'a MIDI note number',
    });
  }
  return requirePositive(a4, A4) * powerOfTwo((pitch - 69) / 12);
}

/**
 * Cents from one frequency up to another, both in Hz and above zero; negative where the second is
 * the lower.
 *
 * @throws ReedplateError `NUMBER_RANGE`
 * @example
 * ```ts
 * import { centsBetween } from '@reedplate/pitch';
 *
 * centsBetween(220, 440); // => 1200
 * centsBetween(0, 440); // throws NUMBER_RANGE
 * ```
 */
export function centsBetween(from: number, to: number): number {
  return 1200 * logOfTwo(requirePositive(to, HERTZ) / requirePositive(from, HERTZ));
}

import type { TechniqueLevel } from '@reedplate/layout';
import type { Chord } from '@reedplate/pitch';
import type { ChordWarning } from './availability.js';

/** Of what a warning speaks. */
export interface WarnedOf {
  readonly chord: Chord;
  /** What the player can do; default `overbends`, as in `chordAvailability`. */
  readonly level?: TechniqueLevel;
}

/** Why a tone is missing: a harp may well have what the level leaves out. */
const MISSING_AT: Readonly<Record<TechniqueLevel, string>> = {
  natural: 'is not there unbent',
  bends: 'is there neither unbent nor bent',
  overbends: 'is not to be had',
};

/**
 * A warning about a chord on a harp as a sentence in English, without a capital or a full stop.
 *
 * @example
 * ```ts
 * import { chordAvailability, describeWarning } from '@reedplate/chord-tone';
 * import { makeHarp } from '@reedplate/layout';
 *
 * const { chord, warnings } = chordAvailability('D7', makeHarp('C'));
 * warnings.map((warning) => describeWarning(warning, { chord }))[0]; // => 'no D7 chord lies on neighbouring holes'
 * ```
 */
export function describeWarning(
  warning: ChordWarning,
  { chord: { symbol }, level = 'overbends' }: WarnedOf,
): string {
  const named = warning.degrees.join(', ');
  if (warning.code === 'NO_WHOLE_CHORD') return `no ${symbol} chord lies on neighbouring holes`;
  if (warning.code === 'NO_NATURAL_TONE') return `the ${named} of ${symbol} is not there unbent`;
  if (warning.code === 'NO_TONE') return `the ${named} of ${symbol} ${MISSING_AT[level]}`;
  return sayContradiction(symbol, warning);
}

function sayContradiction(symbol: string, { shape, clash }: ChordWarning): string {
  const holes = shape?.holes.join('-') ?? '';
  const notes = shape?.tones.map(({ name }) => name).join(' ') ?? '';
  const degrees = shape?.tones.map(({ above }) => above).join(' and ') ?? '';
  const against = clash?.against === undefined ? '' : ` against its ${clash.against}`;
  // Common practice: blues players use the minor third over V, a major tune does not bear it.
  const style = clash?.above === 'b3' ? ': usual in a blues, wrong in a major tune' : '';
  return `${shape?.breath} ${holes} (${notes}) sounds ${degrees} of ${symbol}${against}${style}`;
}

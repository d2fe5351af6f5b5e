import { type PlayerLike, type TechniqueLevel, toPlayer } from '@reedplate/layout';
import {
  type ChordLike,
  type OptionNames,
  requireOneOf,
  requireOptions,
  requireShape,
} from '@reedplate/pitch';
import type { ChordWarning } from './availability.js';
import { toChord } from './to-chord.js';

/** Of what a warning speaks. */
export interface WarnedOf {
  readonly chord: ChordLike;
  /** Who plays, by a level or as a `Player`; default `bends`, as in `chordAvailability`. */
  readonly level?: PlayerLike;
}

/** Why a tone is missing: a harp may well have what the level leaves out. */
const MISSING_AT: Readonly<Record<TechniqueLevel, string>> = {
  natural: 'is not there unbent',
  bends: 'is there neither unbent nor bent',
  overbends: 'is not to be had',
};

const CODES = ['NO_WHOLE_CHORD', 'CLASHING_CHORD', 'NO_UNBENT_TONE', 'NO_TONE'] as const;
const WARNING = { what: 'a warning of chordAvailability', code: 'OPTION_UNKNOWN' } as const;
const WARNED_OF: OptionNames<WarnedOf> = { chord: true, level: true };

function sayMissing(level: PlayerLike): string {
  toPlayer(level);
  return typeof level === 'string' ? MISSING_AT[level] : `is not among what ${level.name} has`;
}

/**
 * A warning about a chord on a harp as a sentence in English, without a capital or a full stop.
 *
 * @throws ReedplateError `OPTION_UNKNOWN`, `CHORD_UNKNOWN`
 * @example
 * ```ts
 * import { chordAvailability, describeWarning } from '@reedplate/chord-tone';
 * import { makeHarp } from '@reedplate/layout';
 *
 * const { chord, warnings } = chordAvailability('D7', makeHarp('C'));
 * warnings.map((warning) => describeWarning(warning, { chord }))[0]; // => 'no D7 chord lies on neighbouring holes'
 * ```
 */
export function describeWarning(warning: ChordWarning, of: WarnedOf): string {
  const { code, degrees } = requireShape(warning, { degrees: 'list' }, WARNING);
  const { chord, level = 'bends' } = requireOptions(of, WARNED_OF, 'describeWarning');
  requireOneOf(code, CODES, { what: 'the code of a warning' });
  const { symbol } = toChord(chord);
  const named = degrees.join(', ');
  if (warning.code === 'NO_WHOLE_CHORD') return `no ${symbol} chord lies on neighbouring holes`;
  if (warning.code === 'NO_UNBENT_TONE') return `the ${named} of ${symbol} is not there unbent`;
  if (warning.code === 'NO_TONE') return `the ${named} of ${symbol} ${sayMissing(level)}`;
  return sayClash(symbol, warning);
}

function sayClash(symbol: string, warning: ChordWarning): string {
  const parts = requireShape(warning, { shape: 'object', clash: 'object' }, WARNING);
  const { shape, clash } = parts as Required<ChordWarning>;
  const notes = shape.tones.map(({ name }) => name).join(' ');
  const degrees = shape.tones.map(({ above }) => above).join(' and ');
  const against = clash.against === undefined ? '' : ` against its ${clash.against}`;
  // Common practice: blues players use the minor third over V, a major tune does not bear it.
  const style = clash.above === 'b3' ? ': usual in a blues, wrong in a major tune' : '';
  return `${shape.breath} ${shape.holes.join('-')} (${notes}) sounds ${degrees} of ${symbol}${against}${style}`;
}

import { nearestOf, ReedplateError } from '@reedplate/pitch';
import { TICKS_PER_QUARTER } from './ticks.js';

/** Note values a metre can count in, as parts of a whole note: whole to sixteenth. */
export type MetreUnit = 1 | 2 | 4 | 8 | 16;

/** A time signature as written: `4/4`, `12/8`; 1 to 32 of its unit in a bar. */
export type Metre = `${number}/${MetreUnit}`;

/** A metre taken apart, with its lengths in ticks. */
export interface MetreParts {
  /** Upper number of the signature, 1 to 32. */
  readonly numerator: number;
  readonly denominator: MetreUnit;
  /** Length of a bar in ticks. */
  readonly barTicks: number;
  /** Length of a felt beat in ticks: in 6/8, 9/8 and 12/8 a dotted quarter, else the unit written. */
  readonly beatTicks: number;
  /** Felt beats in a bar: 4 in 4/4 and in 12/8. */
  readonly beatsPerBar: number;
}

const SIGNATURE = /^([1-9]\d?)\/(1|2|4|8|16)$/u;
const LARGEST_NUMERATOR = 32;

/**
 * Reads a time signature. Metres of 6, 9, 12 and so on eighths or sixteenths are felt in groups of
 * three; all others in the unit written.
 *
 * @throws ReedplateError `METRE_UNKNOWN`
 * @example
 * ```ts
 * import { parseMetre } from '@reedplate/line';
 *
 * parseMetre('4/4').barTicks; // => 3840
 * parseMetre('12/8').beatsPerBar; // => 4
 * parseMetre('12/8').beatTicks; // => 1440
 * parseMetre('4/5'); // throws METRE_UNKNOWN
 * ```
 */
export function parseMetre(metre: string): MetreParts {
  const [, upper, lower] = (typeof metre === 'string' && SIGNATURE.exec(metre)) || [];
  const numerator = Number(upper);
  if (upper === undefined || numerator > LARGEST_NUMERATOR) throw unknownMetre(metre);
  const denominator = Number(lower) as MetreUnit;
  const unitTicks = (TICKS_PER_QUARTER * 4) / denominator;
  const unitsPerBeat = isCompound(numerator, denominator) ? 3 : 1;
  return Object.freeze({
    numerator,
    denominator,
    barTicks: numerator * unitTicks,
    beatTicks: unitsPerBeat * unitTicks,
    beatsPerBar: numerator / unitsPerBeat,
  });
}

/** Metres such as 6/8, 9/8 and 12/8 are felt in groups of three units. */
function isCompound(numerator: number, denominator: MetreUnit): boolean {
  return denominator >= 8 && numerator > 3 && numerator % 3 === 0;
}

/** Metres worth suggesting, the likeliest first. */
const USUAL_METRES: readonly Metre[] = ['4/4', '12/8', '3/4', '6/8', '2/4', '9/8', '2/2'];

function unknownMetre(metre: unknown): ReedplateError {
  return new ReedplateError({
    code: 'METRE_UNKNOWN',
    value: metre,
    expected: 'a time signature such as 4/4, 3/4, 6/8 or 12/8, of 1 to 32 units',
    nearest: typeof metre === 'string' ? nearestOf(metre, USUAL_METRES) : undefined,
  });
}

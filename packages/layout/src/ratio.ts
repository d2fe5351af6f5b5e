import {
  logOfTwo,
  type OptionNames,
  ReedplateError,
  requireOptions,
  requirePositive,
  requireShape,
} from '@reedplate/pitch';

/** A frequency ratio in lowest terms: upper to lower, or a partial's number to another's. */
export interface Ratio {
  readonly numerator: number;
  readonly denominator: number;
}

/** A ratio reduced to lowest terms. */
export function makeRatio(numerator: number, denominator: number): Ratio {
  const divisor = greatestDivisor(numerator, denominator);
  return Object.freeze({ numerator: numerator / divisor, denominator: denominator / divisor });
}

function greatestDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestDivisor(b, a % b);
}

const RATIO = { what: 'a numerator and a denominator', code: 'NUMBER_RANGE' } as const;

/**
 * The size of a ratio in cents.
 *
 * @throws ReedplateError `NUMBER_RANGE`
 * @example
 * ```ts
 * import { ratioCents } from '@reedplate/layout';
 *
 * ratioCents({ numerator: 2, denominator: 1 }); // => 1200
 * ```
 */
export function ratioCents(ratio: Ratio): number {
  const { numerator, denominator } = requireShape(ratio, {}, RATIO);
  const above = requirePositive(numerator, { what: 'a numerator' });
  return 1200 * logOfTwo(above / requirePositive(denominator, { what: 'a denominator' }));
}

/** How {@link nearestRatio} looks. */
export interface NearestRatioOptions {
  /**
   * Largest prime factor allowed, 2 to 31; default 7. Where it is named, an interval that is just a ratio
   * of that very prime is taken for that ratio, though a simpler one is near.
   */
  readonly limit?: number;
}

const NEAREST_OPTIONS: OptionNames<NearestRatioOptions> = { limit: true };

/** Partials beyond this one are too weak to hear beat. Design choice, no source. */
const HIGHEST_PARTIAL = 32;
/** An interval further than this from a ratio is another interval. Design choice, no source. */
const HALF_A_SEMITONE = 50;
/** Cents within which an interval is just a ratio: what rounding to a tenth may hide. Design choice, no source. */
const JUST = 0.05;
/** Cents that count as much as a ratio of twice the product. Design choice, no source. */
const CENTS_PER_OCTAVE_OF_COMPLEXITY = 30;
const PRIMES = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31] as const;

/**
 * The just ratio that an interval is heard as: within half a semitone, simple and near at once,
 * weighing the logarithm of numerator times denominator against the distance in cents. A third of
 * 297.5 cents is heard as a narrow 6/5; only who names 19 as the limit is told that it is just 19/16.
 *
 * @param cents size of the interval, 0 up to five octaves
 * @throws ReedplateError `NUMBER_RANGE`
 * @example
 * ```ts
 * import { nearestRatio } from '@reedplate/layout';
 *
 * nearestRatio(400); // => { numerator: 5, denominator: 4 }
 * nearestRatio(1000); // => { numerator: 7, denominator: 4 }
 * nearestRatio(1000, { limit: 5 }); // => { numerator: 9, denominator: 5 }
 * nearestRatio(297.5, { limit: 19 }); // => { numerator: 19, denominator: 16 }
 * nearestRatio(300, { limit: 19 }); // => { numerator: 6, denominator: 5 }
 * nearestRatio(-1); // throws NUMBER_RANGE
 * ```
 */
export function nearestRatio(cents: number, options: NearestRatioOptions = {}): Ratio {
  const { limit: named } = requireOptions(options, NEAREST_OPTIONS, 'nearestRatio');
  const limit = named ?? 7;
  requireWithin(cents, 0, 6000, 'cents');
  requireWithin(limit, 2, 31, 'a prime limit');
  const allowed = partialsWithin(limit);
  const just = named === undefined ? undefined : justRatioOf(limit, cents, allowed);
  if (just !== undefined) return just;
  let nearest: Ratio = makeRatio(1, 1);
  let least = costOf(nearest, cents);
  for (const denominator of allowed) {
    for (const numerator of allowed) {
      if (numerator < denominator) continue;
      const ratio = makeRatio(numerator, denominator);
      const cost = costOf(ratio, cents);
      if (cost < least) {
        nearest = ratio;
        least = cost;
      }
    }
  }
  return nearest;
}

/** The ratio with the limit's own prime that an interval just is, if it is one. */
function justRatioOf(limit: number, cents: number, allowed: readonly number[]): Ratio | undefined {
  const prime = PRIMES.findLast((one) => one <= limit) ?? 2;
  for (const denominator of allowed) {
    for (const numerator of allowed) {
      const ratio = makeRatio(numerator, denominator);
      if ((ratio.numerator * ratio.denominator) % prime !== 0) continue;
      if (Math.abs(ratioCents(ratio) - cents) < JUST) return ratio;
    }
  }
  return undefined;
}

function costOf(ratio: Ratio, cents: number): number {
  const deviation = Math.abs(ratioCents(ratio) - cents);
  // Only where the limit leaves no ratio in reach does a distant one win, the nearest.
  if (deviation > HALF_A_SEMITONE) return 1e6 + deviation;
  const complexity = logOfTwo(ratio.numerator * ratio.denominator);
  return complexity + deviation / CENTS_PER_OCTAVE_OF_COMPLEXITY;
}

function partialsWithin(limit: number): readonly number[] {
  const primes = PRIMES.filter((prime) => prime > limit);
  return Array.from({ length: HIGHEST_PARTIAL }, (_, index) => index + 1).filter((partial) =>
    primes.every((prime) => partial % prime !== 0),
  );
}

/** Returns a finite number within bounds, both inclusive. */
export function requireWithin(value: unknown, min: number, max: number, what: string): number {
  if (typeof value === 'number' && value >= min && value <= max) return value;
  throw new ReedplateError({ code: 'NUMBER_RANGE', value, expected: `${what}, ${min} to ${max}` });
}

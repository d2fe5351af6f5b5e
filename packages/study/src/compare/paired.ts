import { ReedplateError } from '@reedplate/pitch';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { mean, quantileSorted, sampleStandardDeviation } from 'simple-statistics';

/** One tune under both of what is compared: the figure of the second less that of the first. */
export interface PairedDifference {
  readonly difference: number;
  /** Tunes of one family are drawn together. */
  readonly family: string;
}

/** How differences are drawn again. */
export interface Resampling {
  readonly resamples: number;
  readonly seed: number;
}

/** What paired differences come to. */
export interface PairedFigures {
  /** Mean difference. */
  readonly value: number;
  /** 95 % interval: percentile bootstrap over families. */
  readonly low: number;
  readonly high: number;
  /** Mean over the standard deviation of the differences; null where all are equal. */
  readonly effectSize: number | null;
  /** Chance of so large a mean if the sign of each family's differences were chance: two-sided. */
  readonly probability: number;
}

/** Differences of one family. */
interface Family {
  readonly sum: number;
  readonly count: number;
}

/**
 * Sums paired differences up: percentile bootstrap (Efron 1979, from memory) with whole families drawn again, as
 * Davison and Hinkley (1997), 3.8, do with clusters; a test by random signs (Fisher 1935, from memory); the effect
 * size of paired differences (Cohen 1988, 2.3, from memory).
 *
 * @throws ReedplateError `STUDY_INVALID` for fewer than two families: one says nothing of others
 */
export function pairedFigures(
  pairs: readonly PairedDifference[],
  { resamples, seed }: Resampling,
): PairedFigures {
  const families = familiesOf(pairs);
  if (families.length < 2) {
    const expected = 'two tunes or more, of two families, for an interval';
    throw new ReedplateError({ code: 'STUDY_INVALID', value: families.length, expected });
  }
  const generator = xoroshiro128plus(seed);
  const random = (): number => uniformFloat64(generator);
  const means = Array.from({ length: resamples }, () => drawnMean(families, random)).sort(
    (a, b) => a - b,
  );
  const differences = pairs.map(({ difference }) => difference);
  const spread = sampleStandardDeviation(differences);
  const value = mean(differences);
  return {
    value,
    low: quantileSorted(means, 0.025),
    high: quantileSorted(means, 0.975),
    effectSize: spread === 0 ? null : value / spread,
    probability: chanceOfSigns(families, resamples, random),
  };
}

function familiesOf(pairs: readonly PairedDifference[]): readonly Family[] {
  const families = new Map<string, Family>();
  for (const { difference, family } of pairs) {
    const { sum, count } = families.get(family) ?? { sum: 0, count: 0 };
    families.set(family, { sum: sum + difference, count: count + 1 });
  }
  return [...families.values()];
}

function drawnMean(families: readonly Family[], random: () => number): number {
  let sum = 0;
  let count = 0;
  for (let draw = 0; draw < families.length; draw += 1) {
    const family = families[Math.floor(random() * families.length)] as Family;
    sum += family.sum;
    count += family.count;
  }
  return sum / count;
}

/** Parts of the sum that rounding may be off. */
const ROUNDING = 1e-9;

/** The differences as found are one of the draws, so the chance is never 0. */
function chanceOfSigns(
  families: readonly Family[],
  resamples: number,
  random: () => number,
): number {
  const found = Math.abs(families.reduce((total, { sum }) => total + sum, 0));
  let asLarge = 1;
  for (let draw = 0; draw < resamples; draw += 1) {
    const drawn = families.reduce((total, { sum }) => total + (random() < 0.5 ? sum : -sum), 0);
    if (Math.abs(drawn) >= found * (1 - ROUNDING)) asLarge += 1;
  }
  return asLarge / (resamples + 1);
}

import { type Random, seededRandom } from './contrasts.js';

/** The mean of numbers; NaN of none. */
export function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** A value below which so great a share of the values lies, 0 to 1, in proportion between two. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const at = share * (sorted.length - 1);
  const low = sorted[Math.floor(at)] ?? Number.NaN;
  const high = sorted[Math.ceil(at)] ?? low;
  return low + (at - Math.floor(at)) * (high - low);
}

/** The percentile bootstrap interval of a mean: 95 %, from so many resamples. */
export function bootstrapInterval(
  values: readonly number[],
  resamples = 2000,
  random: Random = seededRandom(1),
): readonly [number, number] {
  const means = Array.from({ length: resamples }, () =>
    mean(values.map(() => values[Math.floor(random() * values.length)] ?? Number.NaN)),
  );
  return [quantile(means, 0.025), quantile(means, 0.975)];
}

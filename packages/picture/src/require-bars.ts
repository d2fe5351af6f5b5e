import { ReedplateError, requireInteger } from '@reedplate/pitch';

/** First and last bar to draw, from 0 for a pickup. */
export type BarRange = readonly [first: number, last: number];

const MOST_BARS = 1_000_000;

/**
 * Returns `bars` if they are a first bar and a last one that is no earlier.
 *
 * @throws ReedplateError `OPTION_UNKNOWN` for what is no pair, `NUMBER_RANGE`
 */
export function requireBars(bars: unknown): BarRange {
  if (!Array.isArray(bars) || bars.length !== 2) {
    throw new ReedplateError({
      code: 'OPTION_UNKNOWN',
      value: bars,
      expected: 'first and last bar, as [1, 4]',
    });
  }
  const first = requireInteger(bars[0], { min: 0, max: MOST_BARS, what: 'the first bar' });
  const last = requireInteger(bars[1], { min: first, max: MOST_BARS, what: 'the last bar' });
  return [first, last];
}

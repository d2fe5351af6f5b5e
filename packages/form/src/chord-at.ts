import { type BarBeat, tickAt } from '@reedplate/line';
import { ReedplateError, requireInteger } from '@reedplate/pitch';
import { requireChartShape } from './require-chart.js';
import type { Chart, ChordSpan } from './types.js';

/**
 * The chord sounding at a tick of a chart, in logarithmic time; `undefined` in the pickup, where
 * no chord sounds yet.
 *
 * @param tick whole number from 0, before the end of the chart
 * @throws ReedplateError `NUMBER_RANGE`, or `CHART_INVALID` for what is no chart
 * @example
 * ```ts
 * import { chordAt, makeChart } from '@reedplate/form';
 *
 * const chart = makeChart('quick-change', 'G', { pickup: 960 });
 * chordAt(chart, 4800)?.chord?.symbol; // => 'C7'
 * chordAt(chart, 0); // => undefined
 * chordAt(chart, 1e9); // throws NUMBER_RANGE
 * ```
 */
export function chordAt(chart: Chart, tick: number): ChordSpan | undefined {
  requireInteger(tick, { min: 0, max: chartEnd(chart) - 1, what: 'a tick of the chart' });
  return chart.spans[lastStartedAt(chart.spans, tick)];
}

/**
 * The chord sounding at a bar and beat of a chart, as {@link chordAt}.
 *
 * @throws ReedplateError `NUMBER_RANGE`, or `CHART_INVALID` for what is no chart
 * @example
 * ```ts
 * import { chordAtBeat, makeChart } from '@reedplate/form';
 *
 * const chart = makeChart('quick-change', 'G');
 * chordAtBeat(chart, { bar: 2, beat: 3 })?.numeral; // => 'IV7'
 * chordAtBeat(chart, { bar: 13, beat: 1 }); // throws NUMBER_RANGE
 * ```
 */
export function chordAtBeat(chart: Chart, place: BarBeat): ChordSpan | undefined {
  const end = chartEnd(chart);
  const tick = tickAt(place, chart);
  if (tick < end) return chordAt(chart, tick);
  throw new ReedplateError({
    code: 'NUMBER_RANGE',
    value: place,
    expected: `a bar from 1 to ${chart.bars}`,
    where: { bar: place.bar, beat: place.beat },
  });
}

/**
 * The first tick after a chart.
 *
 * @throws ReedplateError `CHART_INVALID` for what is no chart
 * @example
 * ```ts
 * import { chartEnd, makeChart } from '@reedplate/form';
 *
 * chartEnd(makeChart('basic', 'G')); // => 46080
 * ```
 */
export function chartEnd(chart: Chart): number {
  const { spans, pickup } = requireChartShape(chart);
  return spans.at(-1)?.end ?? pickup;
}

/** Index of the last span that begins at or before a tick, −1 where none does; by halving. */
export function lastStartedAt(spans: readonly ChordSpan[], tick: number): number {
  let low = 0;
  let high = spans.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const start: unknown = spans[middle]?.start;
    if (typeof start === 'number' && start <= tick) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

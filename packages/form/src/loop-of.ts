import type { Loop } from '@reedplate/line';
import { chartEnd } from './chord-at.js';
import { requireChart } from './require-chart.js';
import type { Chart } from './types.js';

/**
 * What of a chart is played again and again where it goes on without end: all its choruses, without
 * the pickup and the introduction.
 *
 * @throws ReedplateError `CHART_INVALID` for what is no chart
 * @example
 * ```ts
 * import { loopOf, makeChart } from '@reedplate/form';
 * import { foldTick, tickAtSeconds } from '@reedplate/line';
 *
 * const chart = makeChart('basic', 'G', { tempo: 120, pickup: 960 });
 * const loop = loopOf(chart); // => { start: 960, end: 47040 }
 * foldTick(tickAtSeconds(25, chart, { loop }), loop); // => { tick: 1920, pass: 2 }
 * ```
 */
export function loopOf(chart: Chart): Loop {
  const first = requireChart(chart).spans.find(({ chorus }) => chorus > 0);
  return Object.freeze({ start: first?.start ?? chart.pickup, end: chartEnd(chart) });
}

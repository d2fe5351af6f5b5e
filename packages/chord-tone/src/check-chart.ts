import type { Chart } from '@reedplate/form';
import { type ErrorPlace, ReedplateError } from '@reedplate/pitch';

/**
 * A chart fit to be played or scored: with a chord, its spans in order. That they agree with the
 * form and key is for `readChart` of `@reedplate/form` to check.
 *
 * @throws ReedplateError `CHART_INVALID`
 *
 * @internal
 */
export function checkChart(chart: Chart): Chart {
  if (typeof chart !== 'object' || chart === null) throw invalid(chart, 'a chart', {});
  const { spans, bars, form } = chart;
  if (!Array.isArray(spans)) throw invalid(spans, 'a list of chord spans', { path: 'spans' });
  checkOrder(spans);
  if (!spans.some(({ chord }) => chord !== null)) {
    throw invalid(form, 'a chart with a chord', { path: 'spans' });
  }
  if (!Number.isSafeInteger(bars) || bars < 1) {
    throw invalid(bars, 'a number of bars', { path: 'bars' });
  }
  return chart;
}

function checkOrder(spans: Chart['spans']): void {
  let before = 0;
  for (const [index, span] of spans.entries()) {
    const { start, end } = span ?? {};
    if (
      !(Number.isSafeInteger(start) && Number.isSafeInteger(end) && start >= before && end > start)
    ) {
      throw invalid(start, 'spans in order, each of some ticks', {
        path: `spans[${index}]`,
        index,
      });
    }
    before = end;
  }
}

function invalid(value: unknown, expected: string, where: ErrorPlace): ReedplateError {
  return new ReedplateError({ code: 'CHART_INVALID', value, expected, where });
}

import { type Chart, requireChart } from '@reedplate/form';
import { ReedplateError } from '@reedplate/pitch';

/**
 * A chart fit to be played or scored: with a chord, its spans in order. That they agree with the
 * form and key is for `readChart` of `@reedplate/form` to check.
 *
 * @throws ReedplateError `CHART_INVALID`
 *
 * @internal
 */
export function checkChart(chart: Chart): Chart {
  const { spans, form } = requireChart(chart);
  if (spans.some(({ chord }) => chord !== null)) return chart;
  throw new ReedplateError({
    code: 'CHART_INVALID',
    value: form,
    expected: 'a chart with a chord',
    where: { path: 'spans' },
  });
}

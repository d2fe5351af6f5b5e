import { parseMetre } from '@reedplate/line';
import { itemAt, ReedplateError, requireOptions } from '@reedplate/pitch';
import { FORM_DETAILS, type FormDetails, MOST_SHARES, makeForm } from './make-form.js';
import { requireChart } from './require-chart.js';
import type { Chart, ChordSpan, Form, FormBar } from './types.js';

/**
 * The form that a chart's bars make, introduction and all choruses included: {@link makeChart} gives
 * the same spans again. For a chart that was read from a file, and for asking
 * {@link recogniseForm} which form it is.
 *
 * @param details default id, metre and feel those of the chart
 * @throws ReedplateError `CHART_INVALID` for what is no chart, `FORM_INVALID` where chords share a bar in no whole parts, up to 64, and
 * for more than 1024 bars
 * @example
 * ```ts
 * import { formOfChart, makeChart } from '@reedplate/form';
 *
 * const chart = makeChart('bebop', 'F', { intro: 'from-the-turnaround' });
 * formOfChart(chart).bars.length; // => 14
 * formOfChart(chart).bars[1]; // => [{ numeral: 'ii7', weight: 1 }, { numeral: 'V7', weight: 1 }]
 * ```
 */
export function formOfChart(chart: Chart, details: FormDetails = {}): Form {
  requireOptions(details, FORM_DETAILS, 'formOfChart');
  const { form: id, metre, feel, pickup } = requireChart(chart);
  const { barTicks } = parseMetre(metre);
  const bars = Array.from({ length: chart.bars }, (): ChordSpan[] => []);
  for (const span of chart.spans) bars[span.bar - 1]?.push(span);
  const read = bars.map((spans, index) => barOfSpans(spans, pickup + index * barTicks, barTicks));
  return makeForm(read, { id, metre, feel, ...details });
}

/** Tries how many shares the bar has, fewest first, until each chord begins on one. */
function barOfSpans(spans: readonly ChordSpan[], barStart: number, barTicks: number): FormBar {
  const edges = [...spans.map(({ start }) => start - barStart), barTicks];
  for (let shares = 1; shares <= MOST_SHARES; shares += 1) {
    const places = edges.map((edge) => Math.round((edge * shares) / barTicks));
    const isOnShares = edges.every(
      (edge, at) => Math.round((barTicks * itemAt(places, at)) / shares) === edge,
    );
    if (isOnShares) {
      return spans.map(({ numeral }, at) => ({
        numeral,
        weight: itemAt(places, at + 1) - itemAt(places, at),
      }));
    }
  }
  throw new ReedplateError({
    code: 'FORM_INVALID',
    value: edges,
    expected: `chords that share the bar in whole parts, up to ${MOST_SHARES}`,
    where: { bar: spans[0]?.bar ?? 0 },
  });
}

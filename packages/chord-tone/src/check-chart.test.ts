import { type Chart, makeChart } from '@reedplate/form';
import { makeLine } from '@reedplate/line';
import { describe, expect, it } from 'vitest';
import { checkChart } from './check-chart.js';
import { scoreLine } from './score/score-line.js';

const chart = makeChart('basic', 'G');
const [first, second] = chart.spans;
const take = makeLine([{ start: 0, duration: 960, pitch: 67 }]);

function withSpans(...spans: readonly unknown[]): object {
  return { ...chart, spans };
}

describe('checkChart', () => {
  it('checkChart gives a chart back as it is', () => {
    expect(checkChart(chart)).toBe(chart);
  });

  it.each([
    ['nothing', null, {}],
    ['text', 'I7 | IV7', {}],
    ['a chart without a list of spans', { ...chart, spans: 'none' }, { path: 'spans' }],
    ['a chart without spans', withSpans(), { path: 'spans' }],
    ['a chart of breaks', { ...withSpans({ ...first, chord: null }), bars: 1 }, { path: 'spans' }],
    ['spans out of order', withSpans(second, first), { path: 'spans[0].start' }],
    ['a span without length', withSpans({ ...first, end: 0 }), { path: 'spans[0].end' }],
    ['a span without end', withSpans({ ...first, end: Infinity }), { path: 'spans[0].end' }],
    ['a span that is none', withSpans(first, null), { path: 'spans[1]' }],
    ['no bars', { ...chart, bars: -3 }, { path: 'bars' }],
  ])('checkChart refuses %s, and so does scoreLine', (_, bad, where) => {
    const given = bad as Chart;
    const error = expect.objectContaining({ code: 'CHART_INVALID', where });
    expect(() => checkChart(given)).toThrow(error);
    expect(() => scoreLine(take, given)).toThrow(error);
  });
});

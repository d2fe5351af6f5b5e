import { describe, expect, test } from 'vitest';
import {
  type Chart,
  chartEnd,
  chordAt,
  chordChanges,
  formOfChart,
  loopOf,
  makeChart,
  requireChart,
} from './index.js';

const chart = makeChart('quick-change', 'G', { choruses: 2, pickup: 960, tempo: 100 });
const changed = (index: number, fields: object): unknown => ({
  ...chart,
  spans: chart.spans.map((span, at) => (at === index ? { ...span, ...fields } : span)),
});

describe('requireChart', () => {
  test('requireChart gives a chart back, one from JSON too', () => {
    expect(requireChart(chart)).toBe(chart);
    const read: Chart = JSON.parse(JSON.stringify(chart));
    expect(requireChart(read)).toBe(read);
  });

  test.each<[unknown, object]>([
    [undefined, {}],
    [null, {}],
    ['basic', {}],
    [[chart], {}],
    [{}, { path: 'form' }],
    [{ ...chart, key: 'H' }, { path: 'key' }],
    [{ ...chart, metre: '4/5' }, { path: 'metre' }],
    [{ ...chart, feel: 'swing' }, { path: 'feel' }],
    [{ ...chart, tempo: 0 }, { path: 'tempo' }],
    [{ ...chart, intro: 0 }, { path: 'intro' }],
    [{ ...chart, pickup: 3840 }, { path: 'pickup' }],
    [{ ...chart, bars: 2 ** 40 }, { path: 'spans' }],
    [{ ...chart, spans: [] }, { path: 'spans' }],
    [changed(2, { start: 7000 }), { path: 'spans[2].start' }],
    [changed(2, { end: 1e9 }), { path: 'spans[2].end' }],
    [{ ...chart, choruses: 0 }, { path: 'choruses' }],
    [changed(2, { bar: 9 }), { path: 'spans[2].bar' }],
    [changed(2, { bar: 1 }), { path: 'spans[2].bar' }],
    [changed(2, { barOfForm: 'two' }), { path: 'spans[2].barOfForm' }],
    [changed(2, { beat: undefined }), { path: 'spans[2].beat' }],
    [changed(3, { chorus: -1 }), { path: 'spans[3].chorus' }],
    [changed(3, { numeral: 4 }), { path: 'spans[3].numeral' }],
    [changed(3, { chord: 'G7' }), { path: 'spans[3].chord' }],
    [changed(3, { chord: {} }), { path: 'spans[3].chord.tones' }],
  ])('requireChart says where a chart is none (case %#)', (value, where) => {
    const error = expect.objectContaining({ code: 'CHART_INVALID', where });
    for (const take of [requireChart, loopOf, chordChanges, formOfChart]) {
      expect(() => take(value as Chart)).toThrow(error);
    }
  });

  test('what looks at one place of a chart asks for its fields alone', () => {
    const code = 'CHART_INVALID';
    expect(() => chartEnd([] as never)).toThrow(expect.objectContaining({ code }));
    expect(() => chordAt('G' as never, 0)).toThrow(expect.objectContaining({ code }));
  });
});

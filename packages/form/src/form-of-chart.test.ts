import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formsOf, metres } from './arbitraries.js';
import { FORMS } from './catalogue.js';
import { formById } from './form-by-id.js';
import { formOfChart } from './form-of-chart.js';
import { formatForm } from './format-form.js';
import { makeChart } from './make-chart.js';
import { recogniseForm } from './recognise-form.js';
import type { Form } from './types.js';

const chartOf = (form: Form, options = {}) =>
  makeChart(form, form.mode === 'minor' ? 'Am' : 'A', { ...options });

describe('formOfChart', () => {
  test('formOfChart undoes makeChart for every form of the catalogue', () => {
    for (const form of FORMS) {
      const { bars, id, metre, feel, mode } = formOfChart(chartOf(form, { pickup: 240 }));
      const expected = { bars: form.bars, id: form.id, metre: form.metre, feel: form.feel };
      expect({ bars, id, metre, feel }).toEqual(expected);
      expect(mode).toBe(form.mode);
    }
  });

  test('makeChart of formOfChart gives the same spans, for any form in any metre', () => {
    fc.assert(
      fc.property(formsOf(), metres, (form, metre) => {
        const chart = chartOf(form, { metre });
        expect(chartOf(formOfChart(chart))).toEqual(chart);
      }),
    );
  });

  test('formOfChart holds introduction, choruses, breaks and ending', () => {
    const chart = chartOf(formById('vamp'), {
      intro: 'from-the-turnaround',
      choruses: 2,
      ending: 'five-one',
      breaks: [{ chorus: 1, bars: [4], hit: 'first-beat' }],
    });
    expect(formatForm(formOfChart(chart, { id: 'whole' }), { barsPerLine: 20 })).toBe(
      '| I7 | % | % | % | % | I7 N.C. / / | I7 | % | % | V7 I7 |',
    );
  });

  test('formOfChart lets recogniseForm say what a chart is', () => {
    const chart = chartOf(formById('jazz'), { choruses: 3 });
    const played = formatForm(formOfChart(chart), { key: chart.key });
    expect(recogniseForm(played).best).toMatchObject([{ form: 'jazz', key: 'A', choruses: 3 }]);
  });

  test('formOfChart refuses chords on no share of the bar', () => {
    const chart = chartOf(formById('vamp'));
    const [first, ...rest] = chart.spans;
    if (first === undefined) throw new Error('a vamp has spans');
    const odd = { ...first, start: 1, beat: 1 + 1 / 960 };
    expect(() => formOfChart({ ...chart, spans: [{ ...first, end: 1 }, odd, ...rest] })).toThrow(
      expect.objectContaining({ code: 'FORM_INVALID', where: { bar: 1 } }),
    );
  });
});

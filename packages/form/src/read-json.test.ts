import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formsOf, metres, tonics } from './arbitraries.js';
import { FORMS } from './catalogue.js';
import { formById } from './form-by-id.js';
import { makeChart } from './make-chart.js';
import { readChart } from './read-chart.js';
import { readForm } from './read-form.js';

const again = (value: unknown) => JSON.parse(JSON.stringify(value));

describe('readForm', () => {
  test('readForm gives back every form of the catalogue, from JSON text and parsed', () => {
    for (const form of FORMS) {
      expect(readForm(again(form))).toEqual(form);
      expect(readForm(JSON.stringify(form))).toEqual(form);
    }
  });

  test('readForm gives back any form', () => {
    fc.assert(
      fc.property(formsOf(), ({ name, ...form }) => {
        expect(readForm(again({ ...form, name }))).toEqual({ ...form, name });
      }),
    );
  });

  test('readForm asks for bars only', () => {
    expect(readForm({ bars: [[{ numeral: 'I7', weight: 1 }]] })).toMatchObject({
      id: 'custom',
      metre: '4/4',
      feel: 'shuffle',
    });
  });

  test.each([
    ['', 'JSON_MALFORMED', {}],
    ['[]', 'FORM_INVALID', {}],
    ['null', 'FORM_INVALID', {}],
    [{}, 'FORM_INVALID', {}],
    [{ bars: [] }, 'FORM_INVALID', {}],
    [{ bars: [[]] }, 'FORM_INVALID', { bar: 1 }],
    [{ bars: [[null]] }, 'FORM_INVALID', { path: 'bars[0][0]' }],
    [{ bars: [[{ numeral: 'H', weight: 1 }]] }, 'FORM_INVALID', { bar: 1 }],
    [{ bars: [[{ numeral: 7, weight: 1 }]] }, 'FORM_INVALID', { bar: 1 }],
    [{ bars: [[{ numeral: 'I', weight: 0 }]] }, 'FORM_INVALID', { bar: 1 }],
    [{ bars: [[{ numeral: 'I', weight: 65 }]] }, 'FORM_INVALID', { bar: 1 }],
    [{ bars: [[{ numeral: 'I', wieght: 1 }]] }, 'FORM_INVALID', { path: 'bars[0][0].wieght' }],
    [{ ...formById('vamp'), mode: 'minor' }, 'FORM_INVALID', { path: 'mode' }],
    [{ ...formById('vamp'), id: 'Vamp' }, 'FORM_INVALID', { path: 'id' }],
    [{ ...formById('vamp'), name: 1 }, 'FORM_INVALID', { path: 'name' }],
    [{ ...formById('vamp'), key: 'C' }, 'FORM_INVALID', { path: 'key' }],
    [{ ...formById('vamp'), feel: 'swing' }, 'OPTION_UNKNOWN', {}],
    [{ ...formById('vamp'), metre: '4/5' }, 'METRE_UNKNOWN', {}],
  ])('readForm refuses %j with %s', (json, code, where) => {
    expect(() => readForm(json)).toThrow(expect.objectContaining({ code, where }));
  });

  test('readForm refuses more shares than a bar can hold', () => {
    const bar = [
      { numeral: 'I', weight: 64 },
      { numeral: 'V', weight: 1 },
    ];
    expect(() => readForm({ bars: [bar] })).toThrow(
      expect.objectContaining({ code: 'FORM_INVALID', value: 65 }),
    );
  });
});

describe('readChart', () => {
  const chart = makeChart('jazz', 'Bb', {
    choruses: 2,
    pickup: 960,
    tempo: 120.5,
    intro: 'from-the-five',
    breaks: [{ chorus: 2, bars: [1] }],
  });

  test('readChart gives back a chart with all it can have', () => {
    expect(readChart(again(chart))).toEqual(chart);
    expect(readChart(JSON.stringify(chart))).toEqual(chart);
    expect(Object.isFrozen(readChart(again(chart)).spans[0])).toBe(true);
  });

  test('readChart gives back the chart of any form in any key and metre', () => {
    fc.assert(
      fc.property(formsOf(), tonics, metres, (form, tonic, metre) => {
        const made = makeChart(form, form.mode === 'minor' ? `${tonic}m` : tonic, { metre });
        expect(readChart(again(made))).toEqual(made);
      }),
    );
  });

  const changed = (index: number, fields: object) => ({
    ...chart,
    spans: chart.spans.map((span, at) => (at === index ? { ...span, ...fields } : span)),
  });

  test.each([
    ['', '', 'JSON_MALFORMED'],
    ['', '7', 'CHART_INVALID'],
    ['form', { ...chart, form: 7 }, 'CHART_INVALID'],
    ['key', { ...chart, key: 'H' }, 'CHART_INVALID'],
    ['metre', { ...chart, metre: '4/5' }, 'CHART_INVALID'],
    ['feel', { ...chart, feel: 'swing' }, 'CHART_INVALID'],
    ['tempo', { ...chart, tempo: -1 }, 'CHART_INVALID'],
    ['choruses', { ...chart, choruses: 0 }, 'CHART_INVALID'],
    ['intro', { ...chart, intro: 0 }, 'CHART_INVALID'],
    ['pickup', { ...chart, pickup: 3840 }, 'CHART_INVALID'],
    ['spans', { ...chart, bars: 27 }, 'CHART_INVALID'],
    ['spans', { ...chart, spans: {} }, 'CHART_INVALID'],
    ['spans', { ...chart, spans: [] }, 'CHART_INVALID'],
    ['spans[0]', { ...chart, spans: [null] }, 'CHART_INVALID'],
    ['pickUp', { ...chart, pickUp: 0 }, 'CHART_INVALID'],
    ['spans[2].start', changed(2, { start: 7000 }), 'CHART_INVALID'],
    ['spans[2].end', changed(2, { end: 12481 }), 'CHART_INVALID'],
    ['spans[2].bar', changed(2, { bar: 9 }), 'CHART_INVALID'],
    ['spans[3].beat', changed(3, { beat: 2 }), 'CHART_INVALID'],
    ['spans[3].chorus', changed(3, { chorus: 3 }), 'CHART_INVALID'],
    ['spans[3].barOfForm', changed(3, { barOfForm: 0 }), 'CHART_INVALID'],
    ['spans[3].numeral', changed(3, { numeral: 'VIII' }), 'CHART_INVALID'],
    ['spans[3].chord.symbol', changed(3, { numeral: 'IV7' }), 'CHART_INVALID'],
    ['spans[3].chord', changed(3, { numeral: null }), 'CHART_INVALID'],
    ['spans[3].chord.symbol', changed(3, { chord: null }), 'CHART_INVALID'],
  ])('readChart says what is wrong at %j', (path, json, code) => {
    expect(() => readChart(json)).toThrow(
      expect.objectContaining({ code, where: path === '' ? {} : { path } }),
    );
  });
});

import { parseKey } from '@reedplate/pitch';
import { describe, expect, test } from 'vitest';
import { FORMS } from './catalogue.js';

import { type ChartOptions, makeChart } from './make-chart.js';
import { makeForm } from './make-form.js';
import { parseForm } from './parse-form.js';
import { toMinor } from './to-minor.js';
import type { Form } from './types.js';

const symbols = (...args: Parameters<typeof makeChart>) =>
  makeChart(...args).spans.map(({ chord }) => chord?.symbol ?? 'N.C.');

describe('makeChart', () => {
  test('makeChart spells a quick change in G', () => {
    expect(symbols('quick-change', 'G')).toEqual('G7 C7 G7 G7 C7 C7 G7 G7 D7 C7 G7 D7'.split(' '));
  });

  test('makeChart spells for the key: IV7 in A♭ is D♭7, iv in C♯ minor is F♯m', () => {
    expect(symbols('basic', 'Ab')[4]).toBe('Db7');
    expect(symbols('minor-five-minor', 'C#m')[4]).toBe('F#m');
  });

  test('makeChart takes a tonic alone in the mode of the form', () => {
    expect(makeChart('minor', 'A').key).toBe('Am');
  });

  test('makeChart refuses a minor key for a major form', () => {
    expect(() => makeChart('basic', 'Am')).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN', nearest: 'A' }),
    );
    expect(makeChart(toMinor('basic'), 'Am').key).toBe('Am');
  });

  test('makeChart places chords by their shares of the bar', () => {
    const { spans } = makeChart(parseForm('I7 / / V7 | I7 IV7 I7'), 'C');
    expect(spans.map(({ start, end }) => [start, end])).toEqual([
      [0, 2880],
      [2880, 3840],
      [3840, 5120],
      [5120, 6400],
      [6400, 7680],
    ]);
    expect(spans.map(({ beat }) => beat)).toEqual([1, 4, 1, 1 + 1280 / 960, 1 + 2560 / 960]);
  });

  test('makeChart counts beats as they are felt: a half bar of 12/8 is two beats', () => {
    const { spans } = makeChart(parseForm('12/8 I7 V7'), 'C');
    expect(spans.map(({ beat, start }) => [beat, start])).toEqual([
      [1, 0],
      [3, 2880],
    ]);
  });

  test('makeChart repeats the form for every chorus and counts bars of both', () => {
    const { spans, bars } = makeChart('basic', 'E', { choruses: 3, pickup: 960 });
    expect(bars).toBe(36);
    expect(spans[0]?.start).toBe(960);
    expect(spans[12]).toMatchObject({ chorus: 2, bar: 13, barOfForm: 1 });
    expect(spans[35]).toMatchObject({ chorus: 3, bar: 36, barOfForm: 12 });
  });

  test('makeChart keeps tempo, metre and feel, from the options before the form', () => {
    const chart = makeChart('slow-ninths', 'G', { tempo: 60 });
    expect(chart).toMatchObject({ tempo: 60, metre: '12/8', feel: 'slow-12/8' });
    const told = makeChart('slow-ninths', 'G', { metre: '4/4', feel: 'straight' });
    expect(told).toMatchObject({ metre: '4/4', feel: 'straight' });
    expect('tempo' in told).toBe(false);
  });

  test('makeChart leaves a break without chord', () => {
    const { spans } = makeChart(parseForm('I7 | N.C. | I7'), 'C');
    expect(spans[1]).toMatchObject({ numeral: null, chord: null });
  });

  test('makeChart gives frozen JSON', () => {
    const chart = makeChart('bebop', 'F', { choruses: 2 });
    expect(JSON.parse(JSON.stringify(chart))).toEqual(chart);
    expect(Object.isFrozen(chart.spans)).toBe(true);
    expect(Object.isFrozen(chart.spans[3])).toBe(true);
  });

  test.each<[ChartOptions, string]>([
    [{ choruses: 0 }, 'NUMBER_RANGE'],
    [{ choruses: 1001 }, 'NUMBER_RANGE'],
    [{ pickup: 3840 }, 'NUMBER_RANGE'],
    [{ pickup: 0.5 }, 'NUMBER_RANGE'],
    [{ tempo: 0 }, 'NUMBER_RANGE'],
    [{ tempo: Number.NaN }, 'NUMBER_RANGE'],
    [{ metre: '4/5' as '4/4' }, 'METRE_UNKNOWN'],
    [{ feel: 'swing' as 'shuffle' }, 'OPTION_UNKNOWN'],
  ])('makeChart refuses %j with %s', (options, code) => {
    expect(() => makeChart('basic', 'C', options)).toThrow(expect.objectContaining({ code }));
  });

  test('makeChart takes a form, the id of one, and the id of one of your own', () => {
    const basic = FORMS.find(({ id }) => id === 'basic') as Form;
    expect(makeChart('basic', 'G')).toEqual(makeChart(basic, parseKey('G')));
    const mine = makeForm([[{ numeral: 'IV7', weight: 1 }]], { id: 'basic' });
    expect(symbols('basic', 'C', { known: { forms: [mine] } })).toEqual(['F7']);
    expect(() => makeChart('basics', 'G')).toThrow(
      expect.objectContaining({ code: 'FORM_UNKNOWN', nearest: 'basic' }),
    );
    expect(() => makeChart('| I7 |', 'G')).toThrow('parseForm reads bars');
    expect(() => makeChart({ holes: [] } as never, 'G')).toThrow(
      expect.objectContaining({ code: 'FORM_INVALID' }),
    );
    expect(() => makeChart('basic', 'H' as 'C')).toThrow(
      expect.objectContaining({ code: 'KEY_UNKNOWN' }),
    );
  });

  test('makeChart puts an introduction before the first chorus, as chorus 0', () => {
    const chart = makeChart('basic', 'G', { intro: 'from-the-five', choruses: 2 });
    expect(chart).toMatchObject({ intro: 4, bars: 28, choruses: 2 });
    const places = chart.spans.map(({ chorus, bar, barOfForm }) => [chorus, bar, barOfForm]);
    expect(places[0]).toEqual([0, 1, 9]);
    expect(places[3]).toEqual([0, 4, 12]);
    expect(places[4]).toEqual([1, 5, 1]);
    expect(places[27]).toEqual([2, 28, 12]);
    expect(symbols('basic', 'G', { intro: 'from-the-turnaround' }).slice(0, 3)).toEqual([
      'G7',
      'D7',
      'G7',
    ]);
  });

  test('makeChart ends the last chorus with the ending and leaves the others', () => {
    const names = symbols('vamp', 'E', { choruses: 2, ending: 'half-step-above' });
    expect(names).toEqual(['E7', 'E7', 'E7', 'E7', 'E7', 'E7', 'E7', 'F7', 'E7']);
  });

  test('makeChart breaks the bars of the choruses it is told', () => {
    const names = symbols('vamp', 'E', {
      choruses: 2,
      metre: '3/4',
      breaks: [
        { chorus: 1, bars: [1, 2] },
        { chorus: 2, bars: [4], hit: 'first-beat' },
      ],
    });
    expect(names).toEqual(['N.C.', 'N.C.', 'E7', 'E7', 'E7', 'E7', 'E7', 'E7', 'N.C.']);
    const { spans } = makeChart('vamp', 'E', {
      metre: '3/4',
      breaks: [{ chorus: 1, bars: [1], hit: 'first-beat' }],
    });
    expect(spans[1]).toMatchObject({ start: 960, end: 2880, beat: 2, chord: null });
  });

  test.each<[ChartOptions, string]>([
    [{ intro: 'four' as 'from-the-five' }, 'OPTION_UNKNOWN'],
    [{ ending: 'minor-one' }, 'OPTION_UNKNOWN'],
    [{ breaks: [{ chorus: 2, bars: [1] }] }, 'NUMBER_RANGE'],
    [{ breaks: [{ chorus: 1, bars: [13] }] }, 'NUMBER_RANGE'],
  ])('makeChart refuses %j with %s', (options, code) => {
    expect(() => makeChart('basic', 'G', options)).toThrow(expect.objectContaining({ code }));
  });
});

import { describe, expect, test } from 'vitest';
import { closingVariants } from './closing-variants.js';
import {
  describeRecognition,
  FORMS,
  type Form,
  type FormBar,
  formatForm,
  formOfChart,
  makeChart,
  makeForm,
  parseForm,
  recogniseForm,
  requireChart,
  toForm,
  toMinor,
  withBreak,
  withTurnaround,
} from './index.js';

const bar = (...weights: readonly number[]): FormBar =>
  weights.map((weight, at) => ({ numeral: at === 0 ? 'I7' : 'V7', weight }));
const failure = (code: string, details: object = {}) =>
  expect.objectContaining({ code, ...details });

describe('what is at the very bound is taken', () => {
  test('makeForm takes 1024 bars, and a bar of 64 shares that formOfChart finds again', () => {
    expect(makeForm(Array.from({ length: 1024 }, () => bar(1))).bars).toHaveLength(1024);
    const fine = makeForm([bar(63, 1)]);
    expect(formOfChart(makeChart(fine, 'C')).bars).toEqual(fine.bars);
  });

  test('makeChart takes 1000 choruses, 1000 beats a minute and a pickup a tick short of a bar', () => {
    const vamp = makeForm([bar(1)]);
    expect(makeChart(vamp, 'C', { choruses: 1000 }).bars).toBe(1000);
    expect(makeChart(vamp, 'C', { tempo: 1000 }).tempo).toBe(1000);
    expect(() => makeChart(vamp, 'C', { tempo: 1000.1 })).toThrow(failure('NUMBER_RANGE'));
    expect(requireChart(makeChart(vamp, 'C', { pickup: 3839 })).pickup).toBe(3839);
  });

  test('parseForm takes a text of 100,000 signs, and bars that are texts themselves', () => {
    expect(parseForm('I7 | IV7'.padEnd(100_000)).bars).toHaveLength(2);
    expect(parseForm(['I7', 'IV7']).bars).toHaveLength(2);
    expect(() => parseForm([['I7'], 'IV7'] as never)).toThrow(failure('FORM_SYNTAX'));
  });

  test('parseForm takes 64 marks in a bar', () => {
    expect(parseForm(`I7 ${'/ '.repeat(62)} V7`).bars).toEqual([bar(63, 1)]);
  });

  test('recogniseForm takes 240 bars and names up to 100 runners-up', () => {
    const chorus = formatForm('basic', { key: 'G', barsPerLine: 12 });
    const bars = Array.from({ length: 20 }, () => chorus.replaceAll('%', 'G7')).join('\n');
    const [best] = recogniseForm(bars, { key: 'G', forms: ['basic'] }).best;
    expect(best?.choruses).toBe(20);
    const vamp = { forms: [makeForm([bar(1)])], key: 'C' } as const;
    expect(recogniseForm('C7', { ...vamp, runnersUp: 100 }).others).toEqual([]);
    expect(() => recogniseForm('C7', { ...vamp, runnersUp: 101 })).toThrow(failure('NUMBER_RANGE'));
  });
});

describe('an option that there is none of is named with the nearest', () => {
  test.each<[string, () => unknown, string]>([
    ['formOfChart', () => formOfChart(makeChart('basic', 'G'), { nmae: 'x' } as never), 'name'],
    ['recogniseForm', () => recogniseForm('G7', { runnerUp: 1 } as never), 'runnersUp'],
    ['formatForm', () => formatForm('basic', { barsPerline: 4 } as never), 'barsPerLine'],
    ['withBreak', () => withBreak('basic', [1], { hitt: 'none' } as never), 'hit'],
    ['toMinor', () => toMinor('basic', { fife: 'V' } as never), 'five'],
    ['makeForm', () => makeForm([bar(1)], { sourse: 'x' } as never), 'source'],
    ['makeChart', () => makeChart('basic', 'G', { chorus: 2 } as never), 'choruses'],
    ['parseForm', () => parseForm('I7', { kee: 'G' } as never), 'key'],
  ])('%s names itself', (name, call, nearest) => {
    const expected = expect.stringContaining(`an option of ${name}:`);
    expect(call).toThrow(failure('OPTION_UNKNOWN', { expected, nearest }));
  });
});

describe('a form from JSON', () => {
  const basic = toForm('basic');

  test.each<[string, object, object]>([
    ['mode', { mode: 'dorian' }, { path: 'mode' }],
    ['feel', { feel: 'swing' }, { path: 'feel' }],
    ['bars', { bars: [] }, { path: 'bars' }],
    ['empty bar', { bars: [bar(1), []] }, { path: 'bars[1]' }],
    ['weight of none', { bars: [bar(0)] }, { path: 'bars[0]' }],
    ['weight of 65', { bars: [bar(65)] }, { path: 'bars[0]' }],
  ])('toForm says where its %s is wrong', (_, part, where) => {
    expect(() => toForm({ ...basic, ...part } as Form)).toThrow(failure('FORM_INVALID', { where }));
  });

  test('toForm says of another metre that there is none such', () => {
    expect(() => toForm({ ...basic, metre: '4/5' } as never)).toThrow(failure('METRE_UNKNOWN'));
  });

  test('toForm gives back what is right, a weight of 64 and a silent bar with it', () => {
    const own = { ...basic, bars: [bar(64), [{ numeral: null, weight: 1 }]] };
    expect(toForm(own)).toBe(own);
  });

  test.each([null, 3, [], { bars: [] }, { mode: 'major' }, { mode: 'major', bars: 12 }])(
    'toForm calls %j no form',
    (none) => {
      expect(() => toForm(none as never)).toThrow(
        failure('FORM_INVALID', { value: none, where: {} }),
      );
    },
  );
});

describe('closingVariants', () => {
  const lasting = (count: number, last: string) =>
    makeForm([...Array.from({ length: count - 1 }, () => bar(1)), last]);
  const endings = (forms: readonly Form[]) =>
    forms.map((form) => closingVariants(forms).get(form)?.length ?? 0);

  test('closingVariants gives other closings to forms of eight bars and more', () => {
    const [seven, eight] = endings([lasting(7, 'IV7'), lasting(8, 'V7')]);
    expect(seven).toBe(0);
    expect(eight).toBeGreaterThan(10);
  });

  test('closingVariants gives them once where forms differ in their last two bars alone', () => {
    const [first, second] = endings([lasting(12, 'IV7'), lasting(12, 'V7')]);
    expect(first).toBeGreaterThan(10);
    expect(second).toBe(0);
  });

  test('closingVariants of the catalogue have the body of their form, and bars that no form has', () => {
    const texts = new Set(FORMS.map(({ bars }) => JSON.stringify(bars)));
    for (const [form, variants] of closingVariants(FORMS)) {
      for (const { bars } of variants) {
        expect(bars.slice(0, -2)).toEqual(form.bars.slice(0, -2));
        expect(texts.has(JSON.stringify(bars))).toBe(false);
        texts.add(JSON.stringify(bars));
      }
    }
  });

  test('withTurnaround suggests the same bars in the mode of the form', () => {
    expect(() => withTurnaround('basic', 'minor-two-five' as never)).toThrow(
      failure('OPTION_UNKNOWN', { nearest: 'two-five' }),
    );
    expect(() => withTurnaround('basic', 'two-fife' as never)).toThrow(
      failure('OPTION_UNKNOWN', { nearest: 'two-five' }),
    );
  });
});

describe('a recognition', () => {
  test('agrees with nothing where more is missing than was given', () => {
    const forms = [makeForm(Array.from({ length: 9 }, () => bar(1)))];
    expect(recogniseForm('F7 | G7', { forms, key: 'C' }).best[0]?.agreement).toBe(0);
  });

  test('describeRecognition refuses one without a match that calls itself near', () => {
    const none = { ...recogniseForm('C7', { key: 'C' }), best: [], near: true, tie: false };
    expect(() => describeRecognition(none)).toThrow(failure('FORM_INVALID'));
  });
});

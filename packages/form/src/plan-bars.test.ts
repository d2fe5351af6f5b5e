import { describe, expect, test } from 'vitest';
import { formById } from './form-by-id.js';
import { parseForm } from './parse-form.js';
import { planBars } from './plan-bars.js';

const PLAN = { choruses: 1, metre: '4/4' } as const;
const told = (...args: Parameters<typeof planBars>) =>
  planBars(...args).map(
    ({ chorus, barOfForm, chords }) =>
      `${chorus}:${barOfForm} ${chords.map(({ numeral }) => numeral ?? 'N.C.').join(' ')}`,
  );

describe('planBars', () => {
  test('planBars plays the form so many times', () => {
    expect(told(parseForm('I7 | V7'), { ...PLAN, choruses: 2 })).toEqual([
      '1:1 I7',
      '1:2 V7',
      '2:1 I7',
      '2:2 V7',
    ]);
  });

  test('planBars takes the introduction from the form, not from its ending', () => {
    const plan = { ...PLAN, intro: 'from-the-turnaround', ending: 'one' } as const;
    const bars = told(formById('basic'), plan);
    expect(bars.slice(0, 2)).toEqual(['0:11 I7', '0:12 V7']);
    expect(bars.slice(-2)).toEqual(['1:11 I7', '1:12 I7']);
  });

  test('planBars breaks the ending where it is told to', () => {
    const breaks = [{ chorus: 1, bars: [4], hit: 'first-beat' }] as const;
    expect(told(formById('vamp'), { ...PLAN, ending: 'five-one', breaks }).at(-1)).toBe(
      '1:4 V7 N.C.',
    );
  });

  test('planBars joins the breaks of one chorus', () => {
    const breaks = [
      { chorus: 2, bars: [1] },
      { chorus: 2, bars: [2] },
    ];
    expect(told(formById('vamp'), { ...PLAN, choruses: 2, breaks }).slice(4)).toEqual([
      '2:1 N.C.',
      '2:2 N.C.',
      '2:3 I7',
      '2:4 I7',
    ]);
  });

  test('planBars counts the beats of a hit in the metre of the chart', () => {
    const breaks = [{ chorus: 1, bars: [1], hit: 'first-beat' }] as const;
    const [bar] = planBars(formById('vamp'), { ...PLAN, metre: '3/4', breaks });
    expect(bar?.chords.map(({ weight }) => weight)).toEqual([1, 2]);
  });

  test.each([0, 3, 1.5])('planBars refuses a break in chorus %d of two', (chorus) => {
    const plan = { ...PLAN, choruses: 2, breaks: [{ chorus, bars: [1] }] };
    expect(() => planBars(formById('vamp'), plan)).toThrow(
      expect.objectContaining({ code: 'NUMBER_RANGE' }),
    );
  });
});

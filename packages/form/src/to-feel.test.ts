import { describe, expect, test } from 'vitest';
import { FEELS, formById, makeChart, makeForm, readChart, toFeel } from './index.js';

describe('toFeel', () => {
  test.each(FEELS)('toFeel takes %s as it is', (feel) => {
    expect(toFeel(feel)).toBe(feel);
  });

  test('toFeel reads slow as players say it, wherever a feel is read', () => {
    const chart = makeChart('basic', 'G', { feel: 'slow' });
    expect([
      toFeel('slow'),
      chart.feel,
      makeForm(formById('basic').bars, { feel: 'slow' }).feel,
      readChart(JSON.stringify({ ...chart, feel: 'slow' })).feel,
    ]).toEqual(Array(4).fill('slow-12/8'));
  });

  test.each(['slower', 'toString', '', 12, null])('toFeel refuses %j', (feel) => {
    expect(() => toFeel(feel)).toThrowError(/a feel/u);
  });
});

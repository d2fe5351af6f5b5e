import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formsOf } from './arbitraries.js';
import { formatForm } from './format-form.js';
import { readPlainBars } from './plain-bars.js';

describe('readPlainBars', () => {
  test('readPlainBars reads shares, repeated bars and breaks', () => {
    expect(readPlainBars('| I7 / / V7 | % | N.C. |\n| IV7 |')).toEqual([
      [
        { numeral: 'I7', weight: 3 },
        { numeral: 'V7', weight: 1 },
      ],
      [
        { numeral: 'I7', weight: 3 },
        { numeral: 'V7', weight: 1 },
      ],
      [{ numeral: null, weight: 1 }],
      [{ numeral: 'IV7', weight: 1 }],
    ]);
  });

  test('readPlainBars reads what formatForm writes, head apart', () => {
    fc.assert(
      fc.property(formsOf(), fc.integer({ min: 1, max: 9 }), (form, barsPerLine) => {
        const text = formatForm(form, { barsPerLine }).replace(/^[a-z].*\n/u, '');
        expect(readPlainBars(text)).toEqual(form.bars);
      }),
    );
  });

  test('readPlainBars knows a bar that it has read before, in another form too', () => {
    const known = new Map();
    const [first, second] = readPlainBars('| I7 | IV7 |', known);
    const again = readPlainBars('| IV7 | % | I7 | I7 |', known);
    expect(again.map((bar) => [first, second].indexOf(bar))).toEqual([1, 1, 0, 0]);
  });

  test('readPlainBars shares the bars it repeats, and freezes them', () => {
    const [first, second] = readPlainBars('| I7 | % |');
    expect(second).toBe(first);
    expect(Object.isFrozen(first)).toBe(true);
    expect(Object.isFrozen(first?.[0])).toBe(true);
  });
});

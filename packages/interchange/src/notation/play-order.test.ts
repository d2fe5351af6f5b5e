import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import type { Measure } from './measure.js';
import { playOrder } from './play-order.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

const plain: Measure = { notes: [], chords: [], length: 1, opens: false, closes: 0, where: {} };

describe('playOrder', () => {
  test('playOrder plays measures without repeats as written', () => {
    expect(playOrder([plain, plain])).toEqual([0, 1]);
    expect(playOrder([])).toEqual([]);
  });

  test('playOrder plays a repeat at most sixteen times', () => {
    expect(playOrder([{ ...plain, closes: 99 }]).length).toBe(16);
  });

  test('playOrder ends, whatever repeats and endings are written', () => {
    const measure = fc
      .record({
        opens: fc.boolean(),
        closes: fc.nat({ max: 5 }),
        endings: fc.option(fc.array(fc.integer({ min: 1, max: 4 }), { maxLength: 2 }), {
          nil: undefined,
        }),
      })
      .map(
        ({ endings, ...bars }): Measure => ({
          ...plain,
          ...bars,
          ...(endings === undefined ? {} : { endings }),
        }),
      );
    fc.assert(
      fc.property(fc.array(measure, { maxLength: 30 }), (measures) => {
        const order = playOrder(measures);
        expect(order.length).toBeLessThanOrEqual(16 * measures.length);
        for (const at of order) expect(measures[at]).toBeDefined();
      }),
      { numRuns: 500 },
    );
  });
});

describe('playOrder, repeats as they are written', () => {
  /** `|:` opens, `||` is a double bar before, `:|` closes (`::|` three times), `1` and `2` are endings; a letter is a measure. */
  function order(text: string): string {
    const letters: string[] = [];
    const measures = text.split(' ').map((word): Measure => {
      letters.push(/[A-Z]/u.exec(word)?.[0] ?? '?');
      const numbers = [...(/[1-9]+/u.exec(word)?.[0] ?? '')].map(Number);
      const colons = /(:+)\|$/u.exec(word)?.[1]?.length ?? 0;
      return {
        ...plain,
        opens: word.startsWith('|:'),
        ...(word.startsWith('||') ? { isAfterDoubleBar: true } : {}),
        closes: colons === 0 ? 0 : colons + 1,
        ...(numbers.length === 0 ? {} : { endings: numbers }),
      };
    });
    return playOrder(measures)
      .map((at) => letters[at])
      .join('');
  }

  test.each([
    ['A B:| C', 'ABABC'],
    ['A |:B C:| D', 'ABCBCD'],
    ['|:A:| |:B:|', 'AABB'],
    ['A:| B:|', 'AABB'],
    ['A::|', 'AAA'],
    ['|:A 1B:| 2C D', 'ABACD'],
    ['|:A 1B:| 2C:| D', 'ABACD'],
    ['|:A 12B:| 3C D', 'ABABACD'],
    ['|:A 1B:| 2C |:D:|', 'ABACDD'],
    ['A |:B 1C:| 2D |:E 1F:| 2G', 'ABCBDEFEG'],
    ['A B:| C ||D E:|', 'ABABCDEDE'],
    ['A B ||C D:| E', 'ABCDCDE'],
    ['A ||B 1C:| 2D E', 'ABCBDE'],
    ['A ||1B:| 2C', 'ABAC'],
    ['|:A ||B C:| D', 'ABCABCD'],
    ['|:A:| B ||C ||D:|', 'AABCDD'],
  ])('playOrder plays %s as %s', (text, expected) => {
    expect(order(text)).toBe(expected);
  });

  test('playOrder takes a double bar within an opened repeat for a line, wherever it stands', () => {
    const double = fc.array(fc.boolean(), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(double, (bars) => {
        const last = bars.length - 1;
        const measures = bars.map(
          (isAfterDoubleBar, at): Measure => ({
            ...{ ...plain, isAfterDoubleBar, opens: at === 0 },
            closes: at === last ? 2 : 0,
          }),
        );
        expect(playOrder(measures)).toEqual([...bars.keys(), ...bars.keys()]);
      }),
    );
  });

  test('playOrder plays every measure that is in no ending at least once', () => {
    const bars = fc.array(
      fc
        .record({ opens: fc.boolean(), closes: fc.nat({ max: 3 }) })
        .map((each): Measure => ({ ...plain, ...each })),
      { maxLength: 30 },
    );
    fc.assert(
      fc.property(bars, (measures) => {
        expect(new Set(playOrder(measures)).size).toBe(measures.length);
      }),
    );
  });
});

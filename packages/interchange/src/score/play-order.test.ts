import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Measure } from './measure.js';
import { playOrder } from './play-order.js';

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

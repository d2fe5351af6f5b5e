import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { alignBars, alignmentCost, type BarCosts } from './align-bars.js';

const GAP = 1;

/** Costs of up to five given bars beside up to four bars of a form, in tenths, from 0 to 1.2. */
const tables: fc.Arbitrary<BarCosts> = fc
  .tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 1, max: 4 }))
  .chain(([given, barsOfForm]) =>
    fc
      .array(fc.integer({ min: 0, max: 12 }), {
        minLength: given * barsOfForm,
        maxLength: given * barsOfForm,
      })
      .map((tenths) => ({ costs: Float64Array.from(tenths, (n) => n / 10), given, barsOfForm })),
  );

/** Every way there is, tried. */
function cheapest(bars: BarCosts, choruses: number, given = 0, expected = 0): number {
  const { costs, barsOfForm } = bars;
  const width = barsOfForm * choruses;
  const ways: number[] = [];
  if (given < bars.given) ways.push(GAP + cheapest(bars, choruses, given + 1, expected));
  if (expected < width) ways.push(GAP + cheapest(bars, choruses, given, expected + 1));
  if (given < bars.given && expected < width) {
    const together = costs[given * barsOfForm + (expected % barsOfForm)] ?? 0;
    ways.push(together + cheapest(bars, choruses, given + 1, expected + 1));
  }
  return ways.length === 0 ? 0 : Math.min(...ways);
}

describe('alignmentCost', () => {
  test('alignmentCost is the least of all ways to set bars beside each other', () => {
    fc.assert(
      fc.property(tables, fc.integer({ min: 1, max: 2 }), (bars, choruses) => {
        const cost = alignmentCost(bars, choruses, Number.POSITIVE_INFINITY);
        expect(cost).toBeCloseTo(cheapest(bars, choruses), 9);
      }),
    );
  });

  test('alignmentCost gives up only on what costs more than the limit', () => {
    fc.assert(
      fc.property(tables, fc.double({ min: 0, max: 5, noNaN: true }), (bars, limit) => {
        const full = alignmentCost(bars, 1, Number.POSITIVE_INFINITY);
        const cost = alignmentCost(bars, 1, limit);
        if (full <= limit) expect(cost).toBe(full);
        else expect(cost).toBeGreaterThan(limit);
      }),
    );
  });
});

describe('alignBars', () => {
  test('alignBars sets every bar once, in order, for the least cost', () => {
    fc.assert(
      fc.property(tables, fc.integer({ min: 1, max: 2 }), (bars, choruses) => {
        const pairs = alignBars(bars, choruses);
        const given = pairs.flatMap((pair) => pair.given ?? []);
        const expected = pairs.flatMap((pair) => pair.expected ?? []);
        expect(given).toEqual(Array.from({ length: bars.given }, (_, at) => at));
        expect(expected).toEqual(Array.from({ length: bars.barsOfForm * choruses }, (_, at) => at));
        const total = pairs.reduce((sum, { cost }) => sum + cost, 0);
        expect(total).toBeCloseTo(alignmentCost(bars, choruses, Number.POSITIVE_INFINITY), 9);
      }),
    );
  });
});

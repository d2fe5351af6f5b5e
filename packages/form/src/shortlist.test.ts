import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addToShortlist, costLimit, nearestCount, type Shortlist } from './shortlist.js';

interface Named {
  readonly name: number;
}

const emptyList = (runnersUp: number): Shortlist<Named> => ({ items: [], runnersUp });
const costs = fc.array(fc.integer({ min: 0, max: 6 }), { minLength: 1, maxLength: 30 });

describe('addToShortlist and costLimit', () => {
  test('costLimit lets anything in until enough are there', () => {
    const list = emptyList(2);
    expect(costLimit(list)).toBe(Number.POSITIVE_INFINITY);
    for (const [name, cost] of [3, 1, 4].entries()) addToShortlist(list, { name, cost });
    expect(list.items.map(({ name }) => name)).toEqual([1, 0, 2]);
    expect(costLimit(list)).toBe(4);
    addToShortlist(list, { name: 3, cost: 1 });
    expect(costLimit(list)).toBe(4);
    addToShortlist(list, { name: 4, cost: 0 });
    expect(costLimit(list)).toBe(1);
  });

  test('a shortlist that refuses what costs more than the limit keeps all that is wanted', () => {
    fc.assert(
      fc.property(costs, fc.integer({ min: 1, max: 5 }), (all, runnersUp) => {
        const list = emptyList(runnersUp);
        const candidates = all.map((cost, name) => ({ name, cost }));
        for (const candidate of candidates) {
          if (candidate.cost <= costLimit(list)) addToShortlist(list, candidate);
        }
        const ranked = [...candidates].sort((a, b) => a.cost - b.cost || a.name - b.name);
        const wanted = ranked.slice(0, nearestCount(ranked) + runnersUp);
        expect(list.items.slice(0, wanted.length)).toEqual(wanted);
      }),
    );
  });

  test('costLimit never rises as items come in', () => {
    fc.assert(
      fc.property(costs, fc.integer({ min: 1, max: 5 }), (all, runnersUp) => {
        const list = emptyList(runnersUp);
        let limit = costLimit(list);
        for (const [name, cost] of all.entries()) {
          if (cost <= limit) addToShortlist(list, { name, cost });
          expect(costLimit(list)).toBeLessThanOrEqual(limit);
          limit = costLimit(list);
        }
      }),
    );
  });
});

describe('nearestCount', () => {
  test.each([
    [[], 0],
    [[2], 1],
    [[2, 2], 2],
    [[1, 2, 2], 1],
  ])('nearestCount of costs %j is %d', (list, count) => {
    expect(nearestCount(list.map((cost) => ({ cost })))).toBe(count);
  });
});

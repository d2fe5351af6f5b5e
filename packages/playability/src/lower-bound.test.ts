import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { melodyCases, models, smallCases } from './arbitraries.fixture.js';
import { lowerBound } from './lower-bound.js';
import { makeProblem } from './problem.js';
import { cheapestWay } from './search.js';
import { cheapestWays } from './search-many.js';

const OPTIONS = { level: 'overbends', valved: false } as const;

describe('lowerBound', () => {
  test('lowerBound is never above what the cheapest way costs', () => {
    let tight = 0;
    fc.assert(
      fc.property(fc.oneof(smallCases, melodyCases), models, ([line, harp], model) => {
        const problem = makeProblem(line, harp, model, OPTIONS);
        const { missing, bound } = lowerBound(problem.times)(problem);
        const way = cheapestWay(problem);
        expect(missing === 0).toBe(way !== undefined);
        if (way === undefined) return;
        expect(bound).toBeLessThanOrEqual(way.cost);
        if (bound > way.cost / 2) tight += 1;
      }),
      { numRuns: 300 },
    );
    // A bound that is always far below would prune nothing.
    expect(tight).toBeGreaterThan(100);
  });

  test('lowerBound counts the events that no choice sounds', () => {
    fc.assert(
      fc.property(smallCases, models, ([line, harp], model) => {
        const problem = makeProblem(line, harp, model, { level: 'natural', valved: false });
        const { count, set } = problem.times;
        const silent = [...set.slice(0, count)].filter((one) => problem.ways[one]?.length === 0);
        expect(lowerBound(problem.times)(problem).missing).toBe(silent.length);
      }),
    );
  });
});

describe('the searches', () => {
  test('cheapestWay and cheapestWays agree, under any ceiling', () => {
    const ceilings = fc.oneof(fc.constant(Infinity), fc.integer({ min: 0, max: 20_000 }));
    let cut = 0;
    fc.assert(
      fc.property(melodyCases, models, ceilings, ([line, harp], model, ceiling) => {
        const problem = makeProblem(line, harp, model, OPTIONS);
        const way = cheapestWay(problem, { ceiling });
        expect(cheapestWays(problem, 1, { ceiling })).toEqual(way === undefined ? [] : [way]);
        if (way === undefined) cut += 1;
        else expect(way.worst).toBeLessThanOrEqual(ceiling);
      }),
      { numRuns: 300 },
    );
    expect(cut).toBeGreaterThan(10);
  });

  test('cheapestWays gives ways that are all different, and no more when asked for more', () => {
    fc.assert(
      fc.property(smallCases, models, ([line, harp], model) => {
        const problem = makeProblem(line, harp, model, OPTIONS);
        const ways = cheapestWays(problem, 200);
        expect(new Set(ways.map(({ choices }) => choices.join())).size).toBe(ways.length);
        expect(cheapestWays(problem, 5)).toEqual(ways.slice(0, 5));
      }),
      { numRuns: 60 },
    );
  });

  test('cheapestWay through a forced choice goes through it, and costs no less', () => {
    fc.assert(
      fc.property(smallCases, models, fc.nat(), fc.nat(), ([line, harp], model, a, b) => {
        const problem = makeProblem(line, harp, model, OPTIONS);
        const best = cheapestWay(problem);
        fc.pre(best !== undefined);
        const event = a % problem.times.count;
        const ways = problem.ways[problem.times.set[event] ?? -1] ?? [];
        const choice = ways[b % ways.length] ?? -1;
        const forced = cheapestWay(problem, { forced: { event, choice } });
        expect(forced?.choices[event]).toBe(choice);
        expect(forced?.cost).toBeGreaterThanOrEqual(best?.cost ?? Number.NaN);
      }),
      { numRuns: 200 },
    );
  });
});

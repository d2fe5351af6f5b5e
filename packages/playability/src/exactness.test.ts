import { makeHarp, makeTuning, TECHNIQUE_LEVELS } from '@reedplate/layout';
import { type Line, makeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { airlessWay, wayAlong } from './airless.js';
import { levels, melodyCases, models, smallCases, smallHarps } from './arbitraries.fixture.js';
import { everyWay, type ListedWay } from './brute-force.fixture.js';
import { bestPath, bestPaths, EFFORT_MODELS, makeEffortModel, PATH_OBJECTIVES } from './index.js';
import { layLattice } from './lattice.js';
import { makeProblem } from './problem.js';
import { cheapestWay } from './search.js';
import { cheapestWays } from './search-many.js';

vi.setConfig({ testTimeout: 60_000 });

const OPTIONS = { level: 'overbends', valved: false } as const;
const worstOf = ({ steps }: ListedWay): number => Math.max(...steps);

/** Models for which breath is most of the effort: short lungs, and dear to go past them. */
const breathless = fc
  .tuple(models, fc.integer({ min: 0, max: 15 }), fc.integer({ min: 0, max: 15 }))
  .map(([model, comfort, more]) =>
    makeEffortModel(model, {
      weights: {
        airStrain: 20,
        airSnatch: 50,
        comfort: comfort / 10,
        capacity: (comfort + more) / 10,
      },
    }),
  );

describe.each(EFFORT_MODELS.map(({ id }) => id))('exactness under the %s profile', (model) => {
  test.each(PATH_OBJECTIVES)(
    'bestPaths by the %s equals every way listed, valves or none',
    (objective) => {
      let several = 0;
      fc.assert(
        fc.property(smallCases, levels, fc.boolean(), ([line, harp], level, valved) => {
          const profile = EFFORT_MODELS.find(({ id }) => id === model) as (typeof EFFORT_MODELS)[0];
          const listed = everyWay(line, harp, profile, { level, valved });
          const all =
            objective === 'total'
              ? listed
              : [...listed].sort((a, b) => worstOf(a) - worstOf(b) || a.total - b.total);
          const found = bestPaths(line, harp, { model, level, valved, objective, count: 7 });
          expect(found.playable).toBe(all.length > 0);
          if (!found.playable) return;
          if (all.length > 1) several += 1;
          expect(
            found.paths.map(({ soundings, effort, worst }) => [soundings, effort, worst]),
          ).toEqual(
            all.slice(0, 7).map((way) => [way.grips, way.total / 1000, worstOf(way) / 1000]),
          );
        }),
        { numRuns: 100 },
      );
      expect(several).toBeGreaterThan(5);
    },
  );
});

describe('breath in the search', () => {
  test('bestPath with hardly any breath equals every way listed, by total and by worst', () => {
    let breathy = 0;
    fc.assert(
      fc.property(smallCases, breathless, ([line, harp], model) => {
        const all = everyWay(line, harp, model, OPTIONS);
        const total = bestPath(line, harp, { ...OPTIONS, model });
        const mildest = bestPath(line, harp, { ...OPTIONS, model, objective: 'worst' });
        expect(total.playable).toBe(all.length > 0);
        if (!total.playable || !mildest.playable) return;
        expect([total.effort, total.soundings]).toEqual([
          (all[0]?.total ?? 0) / 1000,
          all[0]?.grips,
        ]);
        const [mild] = [...all].sort((a, b) => worstOf(a) - worstOf(b) || a.total - b.total);
        expect([mildest.effort, mildest.soundings]).toEqual([
          (mild?.total ?? 0) / 1000,
          mild?.grips,
        ]);
        const lattice = layLattice(makeProblem(line, harp, model, OPTIONS), {});
        if (lattice && airlessWay(lattice) < (all[0]?.total ?? 0)) breathy += 1;
      }),
      { numRuns: 300 },
    );
    // Where breath free is best, nothing would be searched.
    expect(breathy).toBeGreaterThan(50);
  });

  test('cheapestWay of long lines equals the search that lets no state go', () => {
    const repeats = fc.integer({ min: 1, max: 12 });
    let searched = 0;
    fc.assert(
      fc.property(
        melodyCases,
        fc.oneof(breathless, models),
        repeats,
        ([line, harp], model, times) => {
          const long = repeatLine(line, times);
          const problem = makeProblem(long, harp, model, OPTIONS);
          const way = cheapestWay(problem);
          expect(way === undefined ? [] : [way]).toEqual(cheapestWays(problem, 1));
          if (way === undefined) return;
          const lattice = layLattice(problem, {});
          if (lattice && airlessWay(lattice) < way.cost) searched += 1;
        },
      ),
      { numRuns: 150 },
    );
    expect(searched).toBeGreaterThan(20);
  });

  test('cheapestWay within a ceiling equals the search that lets no state go', () => {
    const ceilings = fc.integer({ min: 0, max: 60_000 });
    fc.assert(
      fc.property(melodyCases, breathless, ceilings, ([line, harp], model, ceiling) => {
        const problem = makeProblem(line, harp, model, OPTIONS);
        const way = cheapestWay(problem, { ceiling });
        expect(way === undefined ? [] : [way]).toEqual(cheapestWays(problem, 1, { ceiling }));
      }),
      { numRuns: 200 },
    );
  });

  test('airlessWay never costs more than any way, and wayAlong tells what it costs with breath', () => {
    fc.assert(
      fc.property(smallCases, breathless, ([line, harp], model) => {
        const problem = makeProblem(line, harp, model, OPTIONS);
        const lattice = layLattice(problem, {});
        const all = everyWay(line, harp, model, OPTIONS);
        expect(lattice === undefined).toBe(all.length === 0);
        if (lattice === undefined) return;
        const least = airlessWay(lattice);
        const { choices, cost, worst } = wayAlong(lattice, problem.board.figures);
        expect(least).toBeLessThanOrEqual(all[0]?.total ?? NaN);
        const grips = choices.map((choice) => problem.board.choices[choice]?.soundings);
        const same = all.find((way) => JSON.stringify(way.grips) === JSON.stringify(grips));
        expect([cost, worst]).toEqual([same?.total, worstOf(same as ListedWay)]);
      }),
      { numRuns: 200 },
    );
  });
});

function repeatLine(line: Line, times: number): Line {
  const length = line.notes.reduce(
    (end, { start, duration }) => Math.max(end, start + duration),
    0,
  );
  const notes = Array.from({ length: times }, (_, turn) =>
    line.notes.map((note) => ({ ...note, start: note.start + turn * length })),
  );
  return makeLine(notes.flat(), { tempo: line.tempo ?? 100 });
}

describe('chords and valved bends', () => {
  const chordCases = smallHarps.chain((harp) => {
    const rows = (['blow', 'draw'] as const).map((breath) =>
      harp.holes.map((hole) => hole[breath]),
    );
    const chord = fc
      .constantFrom(...rows)
      .chain((row) => fc.subarray([...new Set(row)], { minLength: 1 }));
    return fc
      .array(fc.tuple(chord, fc.integer({ min: 200, max: 3000 })), { minLength: 1, maxLength: 5 })
      .map((chords) => {
        let start = 0;
        const notes = chords.flatMap(([pitches, duration]) => {
          const begun = start;
          start += duration;
          return pitches.map((pitch) => ({ start: begun, duration, pitch }));
        });
        return [makeLine(notes, { tempo: 90 }), harp] as const;
      });
  });

  test('bestPath of chords and splits equals every way listed', () => {
    let chords = 0;
    fc.assert(
      fc.property(chordCases, fc.oneof(models, breathless), ([line, harp], model) => {
        const all = everyWay(line, harp, model, OPTIONS);
        const found = bestPaths(line, harp, { ...OPTIONS, model, count: 5 });
        expect(found.playable).toBe(all.length > 0);
        if (!found.playable) return;
        expect(found.paths.map(({ soundings }) => soundings)).toEqual(
          all.slice(0, 5).map(({ grips }) => grips),
        );
        if (found.paths[0]?.soundings.some((grip) => grip.length > 1)) chords += 1;
      }),
      { numRuns: 200 },
    );
    expect(chords).toBeGreaterThan(50);
  });

  test('bestPath plays valved bends where valves are, at each level that bends, and as listed', () => {
    // 4 blow of this harp bends down only with a valve.
    const harp = makeHarp('C', { tuning: makeTuning({ id: 'two', blow: 'C4 E4', draw: 'D4 G4' }) });
    const line = makeLine(
      [63, 64, 62].map((pitch, at) => ({ start: at * 960, duration: 960, pitch })),
    );
    const techniques = TECHNIQUE_LEVELS.map((level) => {
      const path = bestPath(line, harp, { level, valved: true });
      const [cheapest] = everyWay(line, harp, EFFORT_MODELS[1] as (typeof EFFORT_MODELS)[0], {
        level,
        valved: true,
      });
      expect(path.playable ? path.soundings : undefined).toEqual(cheapest?.grips);
      return path.playable ? path.soundings[0]?.[0].technique : undefined;
    });
    expect(techniques).toEqual([undefined, 'valved-bend', 'valved-bend']);
    expect(bestPath(line, harp, { level: 'bends', valved: false }).playable).toBe(false);
  });
});

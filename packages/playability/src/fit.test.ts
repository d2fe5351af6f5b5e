import { makeHarp, makeTuning, TUNINGS, transposeHarp } from '@reedplate/layout';
import { makeLine, transposeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { levels, lines, melodies, models, smallHarps } from './arbitraries.fixture.js';
import { everyWay } from './brute-force.fixture.js';
import {
  bestPath,
  EFFORT_WEIGHT_IDS,
  everyHarp,
  makeEffortModel,
  fitHarps as rankHarps,
} from './index.js';

// Listing every way takes its time on a busy machine.
vi.setConfig({ testTimeout: 60_000 });

const near = fc.integer({ min: 58, max: 72 });

describe('fitHarps against every way on every harp', () => {
  test('fitHarps ranks by what can be played, then by the least effort of all ways, then by order', () => {
    let ranked = 0;
    const moves = fc.uniqueArray(fc.integer({ min: -3, max: 3 }), { minLength: 1, maxLength: 3 });
    const cases = fc.record({
      line: lines(near, { maxLength: 5 }),
      harps: fc.array(smallHarps, { minLength: 1, maxLength: 4 }),
      transpositions: moves,
      model: models,
      level: levels,
      count: fc.integer({ min: 1, max: 13 }),
    });
    fc.assert(
      fc.property(cases, ({ line, harps, transpositions, model, level, count }) => {
        const all = harps.flatMap((harp) =>
          transpositions.map((transposition) => {
            const moved = transposeLine(line, transposition);
            const canSound = (start: number) => {
              const notes = moved.notes.filter((note) => note.start === start);
              return everyWay(makeLine(notes), harp, model, { level }).length > 0;
            };
            const notes = moved.notes.filter(({ start }) => canSound(start));
            const missing =
              new Set(moved.notes.map(({ start }) => start)).size -
              new Set(notes.map(({ start }) => start)).size;
            const part = { ...moved, notes };
            const effort =
              notes.length === 0
                ? 0
                : (everyWay(part, harp, model, { level })[0]?.total ?? NaN) / 1000;
            return { harp, transposition, missing, effort };
          }),
        );
        const expected = all.sort((a, b) => a.missing - b.missing || a.effort - b.effort);
        const found = rankHarps(line, harps, { transpositions, model, level, count });
        ranked += found.harps.filter(({ effort }) => effort > 0).length;
        expect(found.considered).toBe(all.length);
        expect(
          found.harps.map(({ harp, transposition, missing, effort }) => {
            return { harp, transposition, missing, effort };
          }),
        ).toEqual(expected.slice(0, count));
      }),
      { numRuns: 300 },
    );
    expect(ranked).toBeGreaterThan(100);
  });

  test('fitHarps passes harps over without changing what it ranks', () => {
    const harps = everyHarp({ tunings: TUNINGS });
    let passedOver = 0;
    fc.assert(
      fc.property(
        melodies(fc.integer({ min: 62, max: 86 }), { maxLength: 12 }),
        models,
        (line, model) => {
          const all = rankHarps(line, harps, { model, level: 'bends', count: harps.length });
          const few = rankHarps(line, harps, { model, level: 'bends', count: 3 });
          expect(all.searched).toBe(harps.length);
          expect(few.harps).toEqual(all.harps.slice(0, 3));
          passedOver += few.considered - few.searched;
        },
      ),
      { numRuns: 10 },
    );
    expect(passedOver).toBeGreaterThan(harps.length);
  });
});

describe('laws of fit', () => {
  test('fitHarps gives each harp the effort of bestPath', () => {
    fc.assert(
      fc.property(melodies(fc.integer({ min: 60, max: 90 })), models, (line, model) => {
        const { harps } = rankHarps(line, everyHarp(), { model, level: 'overbends', count: 12 });
        for (const { harp, missing, effort } of harps) {
          const path = bestPath(line, harp, { model, level: 'overbends' });
          expect(path.playable).toBe(missing === 0);
          if (path.playable) expect(path.effort).toBe(effort);
        }
      }),
      { numRuns: 20 },
    );
  });

  test('fitHarps: the line moved and the harps moved with it rank alike', () => {
    fc.assert(
      fc.property(
        melodies(fc.integer({ min: 60, max: 90 })),
        models,
        fc.integer({ min: -5, max: 5 }),
        (line, model, shift) => {
          const harps = everyHarp({ keys: ['A', 'C', 'D'], tunings: ['standard', 'dorian'] });
          const moved = harps.map((harp) => transposeHarp(harp, shift));
          const plain = (given: typeof harps, at: number) =>
            rankHarps(transposeLine(line, at), given, { model }).harps.map(({ harp, ...rest }) => ({
              ...rest,
              order: given.indexOf(harp),
            }));
          expect(plain(moved, shift)).toEqual(plain(harps, 0));
        },
      ),
      { numRuns: 50 },
    );
  });
});

describe('fitHarps', () => {
  const at = (pitch: number, index: number) => ({ start: index * 960, duration: 960, pitch });

  test('fitHarps says what a harp that cannot play all leaves out', () => {
    const line = makeLine([60, 61, 62, 63].map(at));
    const [only] = rankHarps(line, [makeHarp('C')], { level: 'natural' }).harps;
    expect(only).toMatchObject({
      missing: 2,
      playableShare: 0.5,
      bends: 0,
      lowestHole: 1,
      highestHole: 1,
    });
  });

  test('fitHarps gives a harp that can play nothing no effort, and ranks it last', () => {
    const line = makeLine([at(30, 0)]);
    const { harps } = rankHarps(line, [makeHarp('C'), makeHarp('C', { tuning: 'solo-ten' })]);
    expect(
      harps.map(({ effort, missing, effortPerEvent }) => [effort, missing, effortPerEvent]),
    ).toEqual([
      [0, 1, 0],
      [0, 1, 0],
    ]);
  });

  test('fitHarps counts bends, overbends, breath changes and the balance of breath', () => {
    const line = makeLine([60, 62, 61, 63].map(at), { tempo: 60 });
    const [only] = rankHarps(line, [makeHarp('C')], { level: 'overbends' }).harps;
    expect(only).toMatchObject({
      bends: 1,
      overbends: 1,
      breathChanges: 2,
      breathBalance: 0,
      fullest: 1,
      emptiest: -1,
    });
  });

  test('fitHarps of a line moved past all pitches plays nothing of it', () => {
    const chord = makeLine([at(60, 0), { ...at(64, 0) }, at(62, 1)]);
    const [only] = rankHarps(chord, [makeHarp('C')], { transpositions: [-127] }).harps;
    expect(only).toMatchObject({ missing: 2, playableShare: 0 });
  });

  test('fitHarps searches a harp whose bound equals the last effort ranked: it may stand first in order', () => {
    // Only moving a hole and holding a bend cost anything; the bound knows of moves, not of holding.
    const free = Object.fromEntries(EFFORT_WEIGHT_IDS.map((id) => [id, 0]));
    const weights = { ...free, reach: 1, bendHold: 1, comfort: 60, capacity: 60 };
    const model = makeEffortModel('intermediate', { weights });
    const harpOf = (id: string, blow: string, draw: string) =>
      makeHarp('C', { tuning: makeTuning({ id, blow, draw }) });
    const moving = harpOf('moving', 'C4 D4', 'C4 D4');
    const bending = harpOf('bending', 'C4', 'Eb4');
    const line = makeLine([at(60, 0), at(62, 1)], { tempo: 60 });
    const ranked = (count: number) =>
      rankHarps(line, [moving, bending], { model, count }).harps.map(({ harp, effort }) => [
        harp.tuning,
        effort,
      ]);
    expect(ranked(2)).toEqual([
      ['moving', 1],
      ['bending', 1],
    ]);
    expect(ranked(1)).toEqual([['moving', 1]]);
  });

  test('fitHarps ranks ten harps where no number is asked for, and moves the line nowhere', () => {
    const line = makeLine([{ start: 0, duration: 960, pitch: 67 }]);
    const { harps, considered } = rankHarps(line, everyHarp());
    expect([harps.length, considered]).toEqual([10, 12]);
    expect(new Set(harps.map(({ transposition }) => transposition))).toEqual(new Set([0]));
    expect(rankHarps(line, everyHarp(), { transpositions: [-127, 127] }).considered).toBe(24);
  });

  test('fitHarps refuses to rank no harp, or a line moved to nowhere', () => {
    const line = makeLine([at(60, 0)]);
    const empty = expect.objectContaining({ code: 'LIST_EMPTY' });
    expect(() => rankHarps(line, [])).toThrow(empty);
    expect(() => rankHarps(line, [makeHarp('C')], { transpositions: [] })).toThrow(empty);
  });

  test.each([
    [{ count: 0 }, 'NUMBER_RANGE'],
    [{ transpositions: [0.5] }, 'NUMBER_RANGE'],
    [{ model: 'expert' }, 'MODEL_UNKNOWN'],
  ])('fit refuses %j', (options, code) => {
    expect(() => rankHarps(makeLine([at(60, 0)]), everyHarp(), options)).toThrow(
      expect.objectContaining({ code }),
    );
  });
});

import { makeHarp, soundingsOfPitch, transposeHarp } from '@reedplate/layout';
import { makeLine, transposeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { levels, melodyCases, models, smallCases } from './arbitraries.fixture.js';
import { everyWay } from './brute-force.fixture.js';
import { bestPath, bestPaths, eventsOf } from './index.js';

const valves = fc.boolean();

// Listing every way takes its time on a busy machine.
vi.setConfig({ testTimeout: 60_000 });

/** Runs of the properties that list every way. */
const RUNS = { numRuns: 300 };

describe('exactness against every way there is', () => {
  test('bestPath costs what the cheapest of all ways costs, and is the first of them', () => {
    let playable = 0;
    fc.assert(
      fc.property(smallCases, models, levels, valves, ([line, harp], model, level, valved) => {
        const [cheapest] = everyWay(line, harp, model, { level, valved });
        const found = bestPath(line, harp, { model, level, valved });
        expect(found.playable).toBe(cheapest !== undefined);
        if (!found.playable || cheapest === undefined) return;
        playable += 1;
        expect(found.effort).toBe(cheapest.total / 1000);
        expect(found.worst).toBe(Math.max(...cheapest.steps) / 1000);
        expect(found.soundings).toEqual(cheapest.grips);
      }),
      RUNS,
    );
    expect(playable).toBeGreaterThan(RUNS.numRuns / 10);
  });

  test('bestPath on catalogue tunings equals every way listed, for melodies', () => {
    let playable = 0;
    fc.assert(
      fc.property(melodyCases, models, ([line, harp], model) => {
        const [cheapest] = everyWay(line, harp, model, { level: 'overbends' });
        const found = bestPath(line, harp, { model, level: 'overbends' });
        expect(found.playable).toBe(cheapest !== undefined);
        if (!found.playable || cheapest === undefined) return;
        playable += 1;
        expect(found.effort).toBe(cheapest.total / 1000);
        expect(found.soundings).toEqual(cheapest.grips);
      }),
      RUNS,
    );
    expect(playable).toBeGreaterThan(RUNS.numRuns / 10);
  });

  test('bestPaths gives the true best ways in order', () => {
    let several = 0;
    const counts = fc.integer({ min: 1, max: 12 });
    fc.assert(
      fc.property(smallCases, models, counts, ([line, harp], model, count) => {
        const all = everyWay(line, harp, model, { level: 'overbends' });
        const found = bestPaths(line, harp, { model, level: 'overbends', count });
        expect(found.playable).toBe(all.length > 0);
        if (!found.playable) return;
        if (all.length > count) several += 1;
        expect(found.paths.map(({ soundings }) => soundings)).toEqual(
          all.slice(0, count).map(({ grips }) => grips),
        );
        expect(found.paths.map(({ effort }) => effort)).toEqual(
          all.slice(0, count).map(({ total }) => total / 1000),
        );
      }),
      RUNS,
    );
    expect(several).toBeGreaterThan(RUNS.numRuns / 20);
  });

  test('bestPath and bestPaths with objective worst have the mildest worst step, then the least effort', () => {
    const counts = fc.integer({ min: 1, max: 12 });
    fc.assert(
      fc.property(smallCases, models, counts, ([line, harp], model, count) => {
        const worst = ({ steps }: { steps: readonly number[] }) => Math.max(...steps);
        const all = [...everyWay(line, harp, model, { level: 'overbends' })].sort(
          (a, b) => worst(a) - worst(b) || a.total - b.total,
        );
        const options = { model, level: 'overbends', objective: 'worst' } as const;
        const found = bestPaths(line, harp, { ...options, count });
        const one = bestPath(line, harp, options);
        expect([found.playable, one.playable]).toEqual([all.length > 0, all.length > 0]);
        if (!found.playable || !one.playable) return;
        expect(found.paths.map(({ soundings }) => soundings)).toEqual(
          all.slice(0, count).map(({ grips }) => grips),
        );
        expect(one).toEqual(found.paths[0]);
        expect(one.worst).toBe(worst(all[0] as (typeof all)[number]) / 1000);
      }),
      RUNS,
    );
  });
});

describe('laws of bestPath', () => {
  test('bestPath: moving line and harp together changes nothing', () => {
    const shifts = fc.integer({ min: -7, max: 11 });
    fc.assert(
      fc.property(melodyCases, models, shifts, ([line, harp], model, shift) => {
        const here = bestPath(line, harp, { model });
        const there = bestPath(transposeLine(line, shift), transposeHarp(harp, shift), { model });
        expect(there.playable).toBe(here.playable);
        if (!here.playable || !there.playable) return;
        expect([there.effort, there.worst]).toEqual([here.effort, here.worst]);
        const moved = here.soundings.map((grip) =>
          grip.map((sounding) => ({ ...sounding, pitch: sounding.pitch + shift })),
        );
        expect(there.soundings).toEqual(moved);
      }),
    );
  });

  test('bestPath: allowing more techniques never raises effort', () => {
    fc.assert(
      fc.property(melodyCases, models, valves, ([line, harp], model, valved) => {
        const efforts = (['natural', 'bends', 'overbends'] as const).map((level) => {
          const path = bestPath(line, harp, { model, level, valved });
          return path.playable ? path.effort : Infinity;
        });
        expect(efforts).toEqual([...efforts].sort((a, b) => b - a));
      }),
    );
  });

  test('bestPath: a path sounds exactly the pitches of the line, event by event', () => {
    fc.assert(
      fc.property(smallCases, models, ([line, harp], model) => {
        const path = bestPath(line, harp, { model, level: 'overbends' });
        if (!path.playable) return;
        const sounded = path.soundings.map((grip) =>
          grip.map(({ pitch }) => pitch).sort((a, b) => a - b),
        );
        expect(sounded).toEqual(eventsOf(line).map(({ pitches }) => pitches));
        for (const sounding of path.soundings.flat()) {
          expect(soundingsOfPitch(harp, sounding.pitch, { level: 'overbends' })).toContainEqual(
            sounding,
          );
        }
      }),
    );
  });

  test('bestPath: removing a note never makes the rest unplayable', () => {
    const places = fc.nat();
    fc.assert(
      fc.property(smallCases, levels, places, ([line, harp], level, place) => {
        fc.pre(line.notes.length > 1 && bestPath(line, harp, { level }).playable);
        const rest = makeLine(line.notes.toSpliced(place % line.notes.length, 1));
        expect(bestPath(rest, harp, { level }).playable).toBe(true);
      }),
    );
  });

  test('bestPath: without breath and holding, a slower tempo never raises effort', () => {
    const tempos = fc.tuple(fc.integer({ min: 20, max: 300 }), fc.integer({ min: 20, max: 300 }));
    fc.assert(
      fc.property(smallCases, models, tempos, ([line, harp], model, [one, other]) => {
        const weights = { ...model.weights, airStrain: 0, airSnatch: 0, bendHold: 0 };
        const untiring = { ...model, id: 'untiring', weights };
        const effortAt = (tempo: number) => {
          const path = bestPath(line, harp, { model: untiring, level: 'overbends', tempo });
          return path.playable ? path.effort : 0;
        };
        expect(effortAt(Math.min(one, other))).toBeLessThanOrEqual(effortAt(Math.max(one, other)));
      }),
    );
  });

  test('bestPath: the same after a round trip of line, harp and model through JSON', () => {
    fc.assert(
      fc.property(smallCases, models, ([line, harp], model) => {
        const copy = <Value>(value: Value): Value => JSON.parse(JSON.stringify(value));
        const copied = bestPath(copy(line), copy(harp), { model: copy(model), level: 'bends' });
        expect(copied).toEqual(bestPath(line, harp, { model, level: 'bends' }));
        expect(copy(copied)).toEqual(copied);
      }),
    );
  });
});

describe('bestPath of long lines', () => {
  const wander = (count: number) =>
    makeLine(
      Array.from({ length: count }, (_, at) => ({
        start: at * 480,
        duration: 480,
        pitch: 72 + Math.round(9 * Math.sin(at * 0.9)),
      })),
    );
  const C = makeHarp('C');

  test('bestPath finds what bestPaths finds, though its table of states must grow', () => {
    const options = { model: 'advanced', level: 'overbends' } as const;
    const long = bestPath(wander(2000), C, options);
    const many = bestPaths(wander(2000), C, { ...options, count: 1 });
    expect(long).toEqual(many.playable && many.paths[0]);
  });

  test('bestPath after a very long line finds for a short one what it found before', () => {
    const options = { model: 'advanced', level: 'overbends' } as const;
    const before = bestPath(wander(40), C, options);
    expect(bestPath(wander(20_000), C, options).playable).toBe(true);
    expect(bestPath(wander(40), C, options)).toEqual(before);
  });
});

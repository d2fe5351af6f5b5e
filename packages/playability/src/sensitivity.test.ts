import { makeHarp } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { models, smallCases } from './arbitraries.fixture.js';
import { bestPath, EFFORT_WEIGHT_IDS, effortSensitivity, makeEffortModel } from './index.js';

const TIMES_AND_RATES = ['comfort', 'capacity', 'recovery'];
const COSTS = EFFORT_WEIGHT_IDS.filter((id) => ![...TIMES_AND_RATES, 'chordAir'].includes(id));

describe('effortSensitivity', () => {
  test('effortSensitivity gives what bestPath gives with the weight changed', () => {
    const factors = fc.integer({ min: 2, max: 4 });
    fc.assert(
      fc.property(smallCases, models, factors, ([line, harp], model, factor) => {
        const found = effortSensitivity(line, harp, { model, level: 'overbends', factor });
        if (!found.playable) return;
        for (const { weight, effortAbove } of found.weights) {
          if (TIMES_AND_RATES.includes(weight)) continue;
          const weights = { [weight]: model.weights[weight] * factor };
          const path = bestPath(line, harp, {
            model: makeEffortModel(model, { weights }),
            level: 'overbends',
          });
          expect(path.playable && path.effort).toBe(effortAbove);
        }
      }),
      { numRuns: 50 },
    );
  });

  test('effortSensitivity: a dearer weight never lowers effort, more comfort never raises it', () => {
    fc.assert(
      fc.property(smallCases, models, ([line, harp], model) => {
        const found = effortSensitivity(line, harp, { model, level: 'overbends' });
        if (!found.playable) return;
        const effects = new Map(found.weights.map((effect) => [effect.weight, effect]));
        for (const weight of COSTS) {
          const { effortBelow = NaN, effortAbove = NaN } = effects.get(weight) ?? {};
          expect(effortAbove).toBeGreaterThanOrEqual(effortBelow);
        }
        const { effortBelow = NaN, effortAbove = NaN } = effects.get('comfort') ?? {};
        expect(effortAbove).toBeLessThanOrEqual(effortBelow);
      }),
      { numRuns: 50 },
    );
  });

  const line = makeLine([
    { start: 0, duration: 960, pitch: 67 },
    { start: 960, duration: 960, pitch: 72 },
  ]);

  test('effortSensitivity names every weight once', () => {
    const found = effortSensitivity(line, makeHarp('C'));
    expect(found.playable && found.weights.map(({ weight }) => weight).sort()).toEqual(
      [...EFFORT_WEIGHT_IDS].sort(),
    );
  });

  test('effortSensitivity says which weights turn the path over', () => {
    // G then A: 3 blow and a breath change, or 2 draw and a move of one hole.
    const pitches = [67, 69];
    const toA = makeLine(pitches.map((pitch, at) => ({ start: at * 960, duration: 960, pitch })));
    const found = effortSensitivity(toA, makeHarp('C'), { factor: 4 });
    const turning = found.playable ? found.weights.filter(({ changesPath }) => changesPath) : [];
    expect(turning.map(({ weight }) => weight).sort()).toEqual(['breathChange', 'reach']);
  });

  test('effortSensitivity keeps each weight within what a model may hold, and comfort within capacity', () => {
    const bent = makeLine([{ start: 0, duration: 9600, pitch: 73 }]);
    const most = { bend: 1000, comfort: 60, capacity: 60 };
    const model = makeEffortModel('intermediate', { weights: most });
    const found = effortSensitivity(bent, makeHarp('C'), { model });
    if (!found.playable) throw new Error('4 draw bends');
    const above = (id: string) => found.weights.find(({ weight }) => weight === id)?.effortAbove;
    for (const id of ['bend', 'comfort', 'capacity']) expect(above(id)).toBe(found.effort);
  });

  test('effortSensitivity with less capacity keeps what is comfortable', () => {
    const long = makeLine([{ start: 0, duration: 19_200, pitch: 67 }], { tempo: 60 });
    const weights = { comfort: 2, capacity: 2 };
    const model = makeEffortModel('intermediate', { weights });
    const found = effortSensitivity(long, makeHarp('C'), { model, factor: 10 });
    if (!found.playable) throw new Error('a single G is playable');
    const effect = found.weights.find(({ weight }) => weight === 'capacity');
    expect(effect?.effortBelow).toBe(found.effort);
  });

  test('effortSensitivity takes a factor of ten, and half as much again where none is given', () => {
    const found = (options = {}) => effortSensitivity(line, makeHarp('C'), options);
    expect(found()).toEqual(found({ factor: 1.5 }));
    expect(found({ factor: 10 })).toMatchObject({ playable: true });
    expect(found({ factor: 10 })).not.toEqual(found({ factor: 1.5 }));
  });

  test('effortSensitivity of a line that cannot be played says why', () => {
    expect(
      effortSensitivity(makeLine([{ start: 0, duration: 1, pitch: 30 }]), makeHarp('C')),
    ).toMatchObject({ playable: false });
  });

  test.each([1, 0.5, 11, Number.NaN])('effortSensitivity refuses the factor %d', (factor) => {
    expect(() => effortSensitivity(line, makeHarp('C'), { factor })).toThrow(
      expect.objectContaining({ code: 'NUMBER_RANGE' }),
    );
  });
});

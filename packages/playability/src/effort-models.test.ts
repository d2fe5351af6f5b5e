import { makeHarp } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { describe, expect, test } from 'vitest';
import {
  bestPath,
  EFFORT_MODELS,
  EFFORT_WEIGHT_IDS,
  EFFORT_WEIGHTS,
  type EffortModel,
  effortModelById,
  makeEffortModel,
} from './index.js';

const line = makeLine([{ start: 0, duration: 960, pitch: 60 }]);
const failsWith = (code: string, path?: string) =>
  expect.objectContaining({ code, ...(path && { where: expect.objectContaining({ path }) }) });

describe('EFFORT_WEIGHTS', () => {
  test('EFFORT_WEIGHTS states a unit, a meaning, a ground and a source for every weight, each once', () => {
    expect(new Set(EFFORT_WEIGHT_IDS).size).toBe(EFFORT_WEIGHT_IDS.length);
    for (const { unit, meaning, ground, source } of EFFORT_WEIGHTS) {
      expect([unit, meaning, ground, source].every((text) => text.length > 0)).toBe(true);
    }
  });

  test('EFFORT_MODELS sets every weight that EFFORT_WEIGHTS states, and no other', () => {
    for (const { weights } of EFFORT_MODELS) {
      expect(Object.keys(weights).sort()).toEqual([...EFFORT_WEIGHT_IDS].sort());
    }
  });
});

describe('EFFORT_MODELS', () => {
  test("EFFORT_MODELS are frozen, and pass the check that a model of one's own must pass", () => {
    for (const model of EFFORT_MODELS) {
      expect(Object.isFrozen(model.weights)).toBe(true);
      expect(makeEffortModel(model, { id: model.id })).toEqual(model);
    }
  });

  test('EFFORT_MODELS: every point and every time is smaller for a better player, every breath longer', () => {
    const [beginner, intermediate, advanced] = EFFORT_MODELS.map(({ weights }) => weights);
    if (!beginner || !intermediate || !advanced) throw new Error('three models');
    for (const id of EFFORT_WEIGHT_IDS) {
      const figures = [beginner[id], intermediate[id], advanced[id]];
      const grows = ['comfort', 'capacity', 'recovery'].includes(id);
      expect([id, ...figures]).toEqual([id, ...figures.sort((a, b) => (grows ? a - b : b - a))]);
    }
  });

  test.each(['expert', 'valueOf', '__proto__', ''])('effortModelById refuses %j', (id) => {
    expect(() => effortModelById(id)).toThrow(failsWith('MODEL_UNKNOWN'));
    expect(() => bestPath(line, makeHarp('C'), { model: id })).toThrow(failsWith('MODEL_UNKNOWN'));
  });
});

describe('makeEffortModel', () => {
  test('makeEffortModel replaces what is given and keeps the rest', () => {
    const own = makeEffortModel('advanced', { id: 'loud', level: 'bends', weights: { split: 9 } });
    expect(own).toEqual({
      ...effortModelById('advanced'),
      id: 'loud',
      level: 'bends',
      weights: { ...effortModelById('advanced').weights, split: 9 },
    });
    expect(Object.isFrozen(own.holeRanks.drawBend)).toBe(true);
  });

  test('makeEffortModel gives no figures of its own to an id of the catalogue', () => {
    const changed = { weights: { bend: 1 } };
    expect(() => makeEffortModel('beginner', { id: 'beginner', ...changed })).toThrow(
      expect.objectContaining({ code: 'MODEL_INVALID', where: { path: 'id' } }),
    );
    const stolen = { ...makeEffortModel('beginner', changed), id: 'advanced' };
    expect(() => bestPath(line, makeHarp('C'), { model: stolen })).toThrow(/id of its own/u);
    const spread = JSON.parse(JSON.stringify(effortModelById('beginner')));
    expect(bestPath(line, makeHarp('C'), { model: spread })).toEqual(
      bestPath(line, makeHarp('C'), { model: 'beginner' }),
    );
  });

  test.each([
    [{ weights: { reach: -1 } }, 'weights.reach'],
    [{ weights: { reach: Number.NaN } }, 'weights.reach'],
    [{ weights: { reach: 1001 } }, 'weights.reach'],
    [{ weights: { raech: 1 } }, 'weights.raech'],
    [{ weights: { comfort: 9 } }, 'weights.comfort'],
    [{ weights: { capacity: 61 } }, 'weights.capacity'],
    [{ holeRanks: { drawBend: [] } }, 'holeRanks.drawBend'],
    [{ holeRanks: { blowBend: [0, 2] } }, 'holeRanks.blowBend[1]'],
    [{ holeRanks: { overbend: Array(17).fill(0) } }, 'holeRanks.overbend'],
    [{ level: 'bend' }, 'level'],
    [{ id: '' }, 'id'],
  ] as const)('makeEffortModel refuses %j', (spec, path) => {
    expect(() => makeEffortModel('intermediate', spec as object)).toThrow(
      failsWith('MODEL_INVALID', path),
    );
  });

  const outside = [-1, -Number.MIN_VALUE, 1001, Number.NaN, Infinity, '1', null, undefined, []];
  test.each(EFFORT_WEIGHT_IDS)(
    'makeEffortModel refuses the weight %s where it is out of range',
    (id) => {
      for (const figure of outside) {
        const weights = { [id]: figure } as object;
        for (const model of EFFORT_MODELS) {
          expect(() => makeEffortModel(model, { weights })).toThrow(
            failsWith('MODEL_INVALID', `weights.${id}`),
          );
        }
        const model = { ...effortModelById('advanced') };
        const own = { ...model, id: 'own', weights: { ...model.weights, ...weights } };
        expect(() => bestPath(line, makeHarp('C'), { model: own })).toThrow(
          failsWith('MODEL_INVALID', `weights.${id}`),
        );
      }
    },
  );

  test.each(EFFORT_WEIGHT_IDS)(
    'makeEffortModel takes the weight %s at both ends of its range',
    (id) => {
      const most = { comfort: 8, capacity: 60 }[id as string] ?? 1000;
      const least = id === 'capacity' ? 4 : 0;
      for (const figure of [least, most]) {
        const model = makeEffortModel('intermediate', { weights: { [id]: figure } });
        expect(model.weights[id]).toBe(figure);
        expect(bestPath(line, makeHarp('C'), { model }).playable).toBe(true);
      }
    },
  );

  test.each([null, 7, {}, { ...effortModelById('beginner'), weights: null }])(
    'bestPath refuses the model %j',
    (model) => {
      expect(() =>
        bestPath(line, makeHarp('C'), { model: model as unknown as EffortModel }),
      ).toThrow(failsWith('MODEL_INVALID'));
    },
  );

  test('bestPath sees a change of a model that is not frozen', () => {
    const model = JSON.parse(JSON.stringify(makeEffortModel('intermediate')));
    const harp = makeHarp('C');
    const bent = makeLine([{ start: 0, duration: 960, pitch: 61 }]);
    const before = bestPath(bent, harp, { model });
    model.weights.bend += 1;
    const after = bestPath(bent, harp, { model });
    if (!before.playable || !after.playable) throw new Error('not playable');
    expect(after.effort - before.effort).toBeCloseTo(1, 9);
  });
});

import { makeChart } from '@reedplate/form';
import { isReedplateError } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { play } from './play.fixture.js';
import { replaceWeights, type WeightChanges } from './replace-weights.js';
import { scoreLine } from './score-line.js';
import { SCORE_WEIGHTS } from './weights.js';

const blues = makeChart('basic', 'G');
const take = play('G4@0 Bb4@1 F#4@2 C5@3 E5@4');

describe('replaceWeights', () => {
  it('replaceWeights gives the default weights where nothing is replaced', () => {
    expect(replaceWeights({})).toEqual(SCORE_WEIGHTS);
    expect(replaceWeights(SCORE_WEIGHTS)).toEqual(SCORE_WEIGHTS);
    expect(replaceWeights({ credit: {}, struck: undefined } as unknown as WeightChanges)).toEqual(
      SCORE_WEIGHTS,
    );
  });

  it('replaceWeights replaces single figures and keeps the rest of their part', () => {
    expect(
      replaceWeights({ credit: { blue: 0.8 }, faults: { 'bars-off': 0.2 }, struck: 1 }),
    ).toEqual({
      ...SCORE_WEIGHTS,
      credit: { ...SCORE_WEIGHTS.credit, blue: 0.8 },
      faults: { ...SCORE_WEIGHTS.faults, 'bars-off': 0.2 },
      struck: 1,
    });
  });

  it.each([
    ['a part that does not exist', { strcuk: 1 }, 'OPTION_UNKNOWN', 'weights.strcuk'],
    [
      'a class that does not exist',
      { credit: { Blue: 1 } },
      'OPTION_UNKNOWN',
      'weights.credit.Blue',
    ],
    [
      'a part of an object',
      { landing: { constructor: 1 } },
      'OPTION_UNKNOWN',
      'weights.landing.constructor',
    ],
    ['weights that are none', null, 'OPTION_UNKNOWN', 'weights'],
    ['a table that is none', { faults: 1 }, 'OPTION_UNKNOWN', 'weights.faults'],
    [
      'points that do not rise',
      {
        calibration: [
          { raw: 0, total: 0 },
          { raw: 0, total: 100 },
        ],
      },
      'NUMBER_RANGE',
      'weights.calibration[1].raw',
    ],
    ['a credit above 1', { credit: { root: 1.1 } }, 'NUMBER_RANGE', 'weights.credit.root'],
    ['a figure that is no number', { struck: Number.NaN }, 'NUMBER_RANGE', 'weights.struck'],
    [
      'a figure below 0',
      { faults: { 'one-chord': -1 } },
      'NUMBER_RANGE',
      'weights.faults.one-chord',
    ],
    ['a push longer than a beat', { pushWithin: 1.5 }, 'NUMBER_RANGE', 'weights.pushWithin'],
    ['text', { landWithin: '1' }, 'NUMBER_RANGE', 'weights.landWithin'],
    ['an empty calibration', { calibration: [] }, 'NUMBER_RANGE', 'weights.calibration'],
    [
      'a calibration out of order',
      {
        calibration: [
          { raw: 1, total: 0 },
          { raw: 0, total: 9 },
        ],
      },
      'NUMBER_RANGE',
      'weights.calibration[1].raw',
    ],
    [
      'a calibration that falls',
      {
        calibration: [
          { raw: 0, total: 9 },
          { raw: 1, total: 8 },
        ],
      },
      'NUMBER_RANGE',
      'weights.calibration[1].total',
    ],
    [
      'a total that is no number',
      { calibration: [{ raw: 0, total: Number.NaN }] },
      'NUMBER_RANGE',
      'weights.calibration[0].total',
    ],
  ])('replaceWeights refuses %s', (_, changes, code, path) => {
    const weights = changes as WeightChanges;
    const error = expect.objectContaining({ code, where: { path } });
    expect(() => replaceWeights(weights)).toThrow(error);
    if (changes !== null) expect(() => scoreLine(take, blues, { weights })).toThrow(error);
  });

  it('replaceWeights lets no weights lead out of range: they are refused or the score is in it', () => {
    const figure = fc.oneof(fc.double({ min: -0.2, max: 1.2 }), fc.double());
    const changes = fc.record(
      {
        credit: fc.record({ root: figure, clash: figure }, { requiredKeys: [] }),
        landing: fc.record({ root: figure, clash: figure }, { requiredKeys: [] }),
        faults: fc.record({ 'one-chord': figure, 'bars-off': figure }, { requiredKeys: [] }),
        struck: figure,
        resolveWithin: figure,
        resolvedCredit: figure,
        pushWithin: figure,
        landWithin: figure,
        blindFrom: figure,
        followingShare: figure,
        faultsFrom: figure,
        silence: figure,
        looseFree: figure,
        looseCost: figure,
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(changes, (weights) => {
        const { total, measures } = scoreOrRefusal(weights);
        expect(total >= 0 && total <= 100).toBe(true);
        const known = Object.values(measures).filter((value) => value !== null);
        expect(known.every((value) => value >= 0 && value <= 1)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });
});

function scoreOrRefusal(weights: WeightChanges) {
  try {
    return scoreLine(take, blues, { weights });
  } catch (error) {
    expect(isReedplateError(error) && error.code).toBe('NUMBER_RANGE');
    return { total: 0, measures: {} };
  }
}

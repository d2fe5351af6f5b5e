import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readWeights, weightedMean } from './weighing.js';
import { PICK_WEIGHTS } from './weights.js';

const share = fc.double({ min: 0, max: 1, noNaN: true });
const values = fc.record({
  chordTones: share,
  wholeChords: share,
  scale: share,
  home: share,
  line: share,
});

describe('readWeights', () => {
  it('completes what is given from the defaults', () => {
    expect(readWeights()).toEqual(PICK_WEIGHTS);
    expect(readWeights({ scale: 2 })).toEqual({ ...PICK_WEIGHTS, scale: 2 });
  });

  it('takes any one criterion for all there is', () => {
    const none = { chordTones: 0, wholeChords: 0, scale: 0, home: 0 };
    for (const one of ['chordTones', 'wholeChords', 'scale', 'home'] as const) {
      expect(readWeights({ ...none, [one]: 1 })).toMatchObject({ ...none, [one]: 1 });
    }
  });

  it('names the criterion whose weight is none', () => {
    expect(() => readWeights({ wholeChords: -0.1 })).toThrow(
      expect.objectContaining({
        code: 'NUMBER_RANGE',
        expected: expect.stringContaining('wholeChords'),
        where: { path: 'weights' },
      }),
    );
  });
});

describe('weightedMean', () => {
  it('lies between the least and the greatest value, and is the value where all agree', () => {
    fc.assert(
      fc.property(values, share, (all, one) => {
        const mean = weightedMean(PICK_WEIGHTS, all);
        const parts = Object.values(all);
        expect(mean).toBeGreaterThanOrEqual(Math.min(...parts) - 1e-12);
        expect(mean).toBeLessThanOrEqual(Math.max(...parts) + 1e-12);
        const same = { chordTones: one, wholeChords: one, scale: one, home: one, line: one };
        expect(weightedMean(PICK_WEIGHTS, same)).toBeCloseTo(one, 12);
      }),
    );
  });

  it('leaves a criterion that there is not to the others in proportion', () => {
    const without = { chordTones: 1, wholeChords: 0, scale: 0, home: 0, line: undefined };
    expect(weightedMean(PICK_WEIGHTS, without)).toBeCloseTo(0.35, 12);
  });

  it('does not change when all weights grow alike', () => {
    fc.assert(
      fc.property(values, fc.double({ min: 0.1, max: 10, noNaN: true }), (all, factor) => {
        const grown = readWeights({
          chordTones: PICK_WEIGHTS.chordTones * factor,
          wholeChords: PICK_WEIGHTS.wholeChords * factor,
          scale: PICK_WEIGHTS.scale * factor,
          home: PICK_WEIGHTS.home * factor,
          line: PICK_WEIGHTS.line * factor,
        });
        expect(weightedMean(grown, all)).toBeCloseTo(weightedMean(PICK_WEIGHTS, all), 9);
      }),
    );
  });
});

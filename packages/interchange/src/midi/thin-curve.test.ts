import { centsAt, type PitchPoint } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { thinCurve } from './thin-curve.js';

const curves = fc
  .uniqueArray(fc.record({ at: fc.nat(2000), cents: fc.integer({ min: -300, max: 300 }) }), {
    selector: ({ at }) => at,
    minLength: 1,
    maxLength: 60,
  })
  .map((points): readonly PitchPoint[] => points.sort((a, b) => a.at - b.at));

describe('thinCurve', () => {
  test('keeps first and last, and stays within a cent of every point left out', () => {
    fc.assert(
      fc.property(curves, (curve) => {
        const thin = thinCurve(curve);
        expect([thin[0], thin.at(-1)]).toEqual([curve[0], curve.at(-1)]);
        expect(thin.every((point) => curve.includes(point))).toBe(true);
        for (const { at, cents } of curve) {
          expect(Math.abs(centsAt({ curve: thin }, at) - cents)).toBeLessThanOrEqual(1 + 1e-9);
        }
      }),
      { numRuns: 500 },
    );
  });

  test('leaves of a straight glide its ends, and of a bend and release its corner', () => {
    const at = (tick: number, cents: number): PitchPoint => ({ at: tick, cents });
    const glide = Array.from({ length: 50 }, (_, step) => at(step * 10, step * -2 + 0));
    expect(thinCurve(glide)).toEqual([at(0, 0), at(490, -98)]);
    const release = Array.from({ length: 50 }, (_, step) => at(500 + step * 10, -98 + step * 2));
    const thin = thinCurve([...glide, ...release]);
    expect(thin.length).toBeLessThanOrEqual(4);
    expect([thin[0], thin.at(-1)]).toEqual([at(0, 0), at(990, 0)]);
  });

  test('gives nothing for nothing, and a lone point back', () => {
    expect(thinCurve([])).toEqual([]);
    expect(thinCurve([{ at: 5, cents: 3 }])).toEqual([{ at: 5, cents: 3 }]);
  });
});

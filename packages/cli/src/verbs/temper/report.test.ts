import { chordTuning, makeHarp, tuneHarp } from '@reedplate/layout';
import { midi } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { harps, temperaments } from '../../shared/arbitraries.fixture.js';
import { temperReport } from './report.js';

const a4s = fc.integer({ min: 430, max: 450 });

describe('temperReport', () => {
  test('temperReport has both reeds of every hole, from hole 1 up, blow before draw', () => {
    fc.assert(
      fc.property(harps, temperaments, (harp, temperament) => {
        const { reeds } = temperReport(tuneHarp(harp, temperament));
        expect(reeds.map(({ hole, breath, note }) => [hole, breath, midi(note)])).toEqual(
          harp.holes.flatMap(({ hole, blow, draw }) => [
            [hole, 'blow', blow],
            [hole, 'draw', draw],
          ]),
        );
      }),
    );
  });

  test('temperReport gives hertz that agree with its cents, to what it rounds away', () => {
    fc.assert(
      fc.property(harps, temperaments, a4s, (harp, temperament, a4) => {
        const report = temperReport(tuneHarp(harp, temperament, { a4 }));
        expect(report.a4).toBe(a4);
        for (const { note, cents, frequency } of report.reeds) {
          const expected = a4 * 2 ** ((midi(note) - 69) / 12 + cents / 1200);
          // Cents are rounded to a tenth: at most half of that, 0.003 % of the frequency.
          expect(Math.abs(frequency - expected)).toBeLessThan(expected * 0.00003 + 0.0051);
        }
      }),
    );
  });

  test('temperReport of equal temperament is nowhere off', () => {
    fc.assert(
      fc.property(harps, (harp) => {
        const { reeds } = temperReport(tuneHarp(harp, 'equal'));
        for (const { cents } of reeds) expect(cents).toBe(0);
      }),
    );
  });

  test('temperReport measures every pair of the holes asked about, as chordTuning does', () => {
    fc.assert(
      fc.property(
        temperaments,
        fc.uniqueArray(fc.integer({ min: 1, max: 10 }), { minLength: 2, maxLength: 5 }),
        fc.constantFrom('blow', 'draw'),
        (temperament, unsorted, breath) => {
          const holes = [...unsorted].sort((a, b) => a - b);
          const tuned = tuneHarp(makeHarp('C'), temperament);
          const { intervals } = temperReport(tuned, { holes, breath });
          const known = chordTuning(tuned, holes, breath).intervals;
          expect(intervals).toHaveLength((holes.length * (holes.length - 1)) / 2);
          expect(intervals.map(({ ratio }) => ratio)).toEqual(
            known.map(({ ratio }) => `${ratio.numerator}/${ratio.denominator}`),
          );
          for (const [index, { cents, deviation, beats }] of intervals.entries()) {
            expect(cents).toBeCloseTo(known[index]?.cents ?? Number.NaN, 0);
            expect(deviation).toBeCloseTo(known[index]?.deviation ?? Number.NaN, 0);
            expect(beats).toBeGreaterThanOrEqual(0);
          }
        },
      ),
    );
  });

  test('temperReport has no interval where no holes are asked about, and refuses one alone', () => {
    const tuned = tuneHarp(makeHarp('A'), 'compromise');
    expect(temperReport(tuned).intervals).toEqual([]);
    expect(() => temperReport(tuned, { holes: [3] })).toThrow(
      expect.objectContaining({ name: 'ReedplateError' }),
    );
  });

  test('temperReport says a pure octave beats nowhere', () => {
    const tuned = tuneHarp(makeHarp('C'), 'equal');
    expect(temperReport(tuned, { holes: [1, 4], breath: 'blow' }).intervals).toEqual([
      { lower: 1, upper: 4, ratio: '2/1', cents: 1200, deviation: 0, beats: 0 },
    ]);
  });
});

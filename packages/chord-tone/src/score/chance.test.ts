import { makeChart } from '@reedplate/form';
import { makeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyChart, anyMelody } from '../arbitraries.fixture.js';
import { scoreLine } from './score-line.js';
import { SCORE_WEIGHTS } from './weights.js';

/** The fit alone, on a scale that changes nothing. */
const FIT_ALONE = {
  chanceShare: 0,
  measures: { ...SCORE_WEIGHTS.measures, landing: 0, coverage: 0 },
  calibration: [
    { raw: 0, total: 0 },
    { raw: 1, total: 1 },
  ],
} as const;

/** A seeded linear congruential generator (Numerical Recipes, value from memory). */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

describe('chance of scoreLine', () => {
  it('chance of scoreLine is what pitches drawn from the line reach on average', () => {
    const chart = makeChart('quick-change', 'G');
    const pitches = [67, 70, 71, 72, 73, 74, 77, 79, 65, 62];
    const next = random(7);
    const draw = (): number => pitches[Math.floor(next() * pitches.length)] ?? 67;
    const rhythm = Array.from({ length: 96 }, (_, index) => ({
      start: index * 480,
      duration: 440,
    }));
    // Every pitch as often as any other, so that drawing from the list is drawing from the line.
    const line = makeLine(
      rhythm.slice(0, 90).map((time, index) => ({ ...time, pitch: pitches[index % 10] ?? 67 })),
    );
    const { chance } = scoreLine(line, chart, { weights: FIT_ALONE });
    const draws = Array.from({ length: 400 }, () => {
      const drawn = makeLine(rhythm.slice(0, 90).map((time) => ({ ...time, pitch: draw() })));
      return scoreLine(drawn, chart, { weights: FIT_ALONE }).total;
    });
    const mean = draws.reduce((sum, total) => sum + total, 0) / draws.length;
    expect(Math.abs(chance - mean)).toBeLessThan(0.01);
  });

  it('chance of scoreLine equals the fit of a line of one pitch that does not move', () => {
    fc.assert(
      fc.property(anyMelody, anyChart, fc.integer({ min: 55, max: 79 }), (line, chart, pitch) => {
        const flat = makeLine(line.notes.map((note) => ({ ...note, pitch })));
        const score = scoreLine(flat, chart, { weights: { ...FIT_ALONE, struck: 0 } });
        // A rough note too brief to clash is worth no less than one that clashes.
        expect(score.chance).toBeCloseTo(score.total, 9);
      }),
    );
  });
});

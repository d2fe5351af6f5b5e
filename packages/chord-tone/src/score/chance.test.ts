import { makeChart } from '@reedplate/form';
import { type Line, makeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyChart, anyMelody } from '../arbitraries.fixture.js';
import { scoreLine } from './score-line.js';

/** A seeded linear congruential generator (Numerical Recipes, value from memory). */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

const chart = makeChart('quick-change', 'G');

describe('shuffledFit', () => {
  it('shuffledFit is about what pitches drawn from the line reach on average', () => {
    const pitches = [67, 70, 71, 72, 73, 74, 77, 79, 65, 62];
    const next = random(7);
    const draw = (): number => pitches[Math.floor(next() * pitches.length)] ?? 67;
    const rhythm = Array.from({ length: 90 }, (_, index) => ({
      start: index * 480,
      duration: 440,
    }));
    // Every pitch as often as any other, so that drawing from the list is drawing from the line.
    const line = makeLine(
      rhythm.map((time, index) => ({ ...time, pitch: pitches[index % 10] ?? 67 })),
    );
    const shuffled = scoreLine(line, chart).following?.shuffled ?? 0;
    const draws = Array.from({ length: 200 }, () => {
      const drawn = makeLine(rhythm.map((time) => ({ ...time, pitch: draw() })));
      return scoreLine(drawn, chart, { swing: 1 }).measures.chordFit ?? 0;
    });
    const mean = draws.reduce((sum, chordFit) => sum + chordFit, 0) / draws.length;
    // Turns of the blues, repetitions, runs and enclosures, which it leaves out, make the draws a little better.
    expect(mean - shuffled).toBeGreaterThan(0);
    expect(mean - shuffled).toBeLessThan(0.06);
  });

  it('shuffledFit is the chord fit of a line of one pitch: another order of it is the same', () => {
    fc.assert(
      fc.property(anyMelody, anyChart, fc.integer({ min: 55, max: 79 }), (line, on, pitch) => {
        const flat = makeLine(line.notes.map((note) => ({ ...note, pitch })));
        const { following, measures } = scoreLine(flat, on);
        fc.pre(following !== null);
        expect(following?.shuffled).toBeCloseTo(measures.chordFit ?? -1, 9);
      }),
    );
  });
});

describe('blindFit', () => {
  const held = (symbol: string): ReturnType<typeof makeChart> => {
    const span = chart.spans.find(({ chord }) => chord?.symbol === symbol);
    return { ...chart, spans: chart.spans.map((one) => ({ ...one, chord: span?.chord ?? null })) };
  };

  it('blindFit is the mean of the fits over each chord throughout, by the time it has', () => {
    // The quick change in G: G7 in six bars, C7 in four, D7 in two.
    fc.assert(
      fc.property(anyMelody, (any) => {
        const line: Line = makeLine(any.notes.filter(({ start }) => start < 12 * 3840));
        fc.pre(line.notes.length > 0);
        const fits = ['G7', 'C7', 'D7'].map(
          (symbol) => scoreLine(line, held(symbol)).measures.chordFit,
        );
        const [g = 0, c = 0, d = 0] = fits.map((chordFit) => chordFit ?? 0);
        const { following } = scoreLine(line, chart);
        expect(following?.blind).toBeCloseTo((6 * g + 4 * c + 2 * d) / 12, 9);
      }),
    );
  });

  it('blindFit is what a single pitch reaches when it is held through the chart', () => {
    const tonic = makeLine([{ start: 0, duration: 12 * 3840, pitch: 67 }]);
    const { following, measures } = scoreLine(tonic, chart);
    expect(following?.blind).toBeCloseTo(measures.chordFit ?? -1, 1);
    expect(following?.above).toBeLessThan(0.1);
  });
});

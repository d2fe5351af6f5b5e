import { makeChart, parseForm } from '@reedplate/form';
import { makeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyTonic } from '../arbitraries.fixture.js';
import { compileChart } from './grid.js';
import { barsPlayed } from './played.js';
import { scoreLine } from './score-line.js';
import { hearNotes } from './sounded.js';

const BEAT = 960;
const BAR = 4 * BEAT;
const chart = makeChart('basic', 'G');

function played(notes: readonly { start: number; duration: number }[], on = chart) {
  const line = makeLine(notes.map((note) => ({ ...note, pitch: 67 })));
  return barsPlayed(hearNotes(line, 0), compileChart(on, 'blues'));
}

/** A note in each of some bars. */
const inBars = (...bars: readonly number[]) =>
  bars.map((bar) => ({ start: (bar - 1) * BAR, duration: BEAT }));

describe('barsPlayed', () => {
  it.each([
    ['nothing where every third bar sounds', [1, 4, 7, 10], []],
    ['a run of three', [1, 2, 3, 4, 5, 9, 10, 11, 12], [6, 7, 8]],
    ['the beginning and the end', [4, 5, 6, 7, 8, 9], [1, 2, 3, 10, 11, 12]],
    ['no rest of two bars at either end', [3, 4, 5, 6, 7, 8, 9, 10], []],
    ['all but one bar', [1], [2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]],
  ])('barsPlayed takes for silent %s', (_, bars, silent) => {
    expect(played(inBars(...bars))).toEqual({ of: 12, silent });
  });

  it('barsPlayed hears a held note in every bar that it sounds in', () => {
    expect(played([{ start: 0, duration: 11 * BAR }])).toEqual({ of: 12, silent: [] });
  });

  it('barsPlayed leaves out bars without a chord, which part no run', () => {
    const broken = makeChart(parseForm('| I7 | N.C. | IV7 | V7 | I7 |'), 'G');
    expect(played(inBars(1), broken)).toEqual({ of: 4, silent: [3, 4, 5] });
    expect(played(inBars(1, 2, 4), broken)).toEqual({ of: 4, silent: [] });
  });
});

describe('scoreLine and silence', () => {
  const roots = (on = chart) =>
    on.spans.map(({ start, end, chord }) => ({
      start,
      duration: end - start - 60,
      pitch: 60 + (chord?.tones[0]?.pitchClass ?? 0),
    }));

  it('scoreLine does not take a single root for a chorus', () => {
    const score = scoreLine(makeLine(roots().slice(0, 1)), chart);
    expect(score.total).toBe(0);
    expect(score.verdict).toEqual({ code: 'BARS_NOT_PLAYED', by: 11, otherHarp: null });
    expect(score.feedback[0]).toMatchObject({ code: 'BARS_NOT_PLAYED', count: 11 });
  });

  it('scoreLine takes off nothing for call and response, which leaves two bars of four free', () => {
    const calls = roots().filter((_, bar) => bar % 4 < 2);
    const { played: share, total, feedback } = scoreLine(makeLine(calls), chart);
    expect([share, total]).toEqual([1, 100]);
    expect(feedback.map(({ code }) => code)).not.toContain('BARS_NOT_PLAYED');
  });

  it('scoreLine takes off more than half for half a chorus', () => {
    const half = scoreLine(makeLine(roots().slice(0, 6)), chart);
    expect(half.total).toBeCloseTo(100 * (1 - 1.2 / 2), 9);
  });

  it('scoreLine never gives more for a chorus of roots when more of its bars are silent', () => {
    const anySilence = fc.array(fc.integer({ min: 0, max: 11 }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(anyTonic, anySilence, anySilence, (key, some, more) => {
        const on = makeChart('basic', key);
        const without = (bars: readonly number[]) => {
          const notes = roots(on).filter((_, bar) => !bars.includes(bar));
          return notes.length === 0 ? 0 : scoreLine(makeLine(notes), on).total;
        };
        expect(without([...some, ...more])).toBeLessThanOrEqual(without(some) + 1e-9);
      }),
      { numRuns: 60 },
    );
  });
});

import { makeChart } from '@reedplate/form';
import { makeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyMelody } from '../arbitraries.fixture.js';
import { progressOf } from './progress.js';
import { scoreLine } from './score-line.js';

const chart = makeChart('basic', 'G');
const PITCHES = { G: 67, C: 72, D: 74 } as const;

/** The root of the chord in the bars given, the tonic in all others. */
function rootsIn(bars: readonly number[]) {
  return scoreLine(
    makeLine(
      chart.spans.map(({ start, end, bar, chord }) => ({
        start,
        duration: end - start,
        pitch: bars.includes(bar) ? PITCHES[chord?.root as 'G'] : PITCHES.G,
      })),
    ),
    chart,
  );
}

describe('progressOf', () => {
  it('progressOf says nothing of the first take but its total', () => {
    const only = rootsIn([]);
    expect(progressOf([only]).progress).toEqual([
      { total: only.total, gain: null, betterBars: [], worseBars: [], mended: [], fresh: [] },
    ]);
    expect(progressOf([])).toEqual({ takes: [], progress: [] });
  });

  it('progressOf names the bars that got better, and what was mended', () => {
    const [, second] = progressOf([rootsIn([]), rootsIn([9])]).progress;
    expect([second?.betterBars, second?.worseBars]).toEqual([[9], []]);
    const [, all] = progressOf([rootsIn([]), rootsIn([5, 6, 9, 10, 12])]).progress;
    expect(all?.mended).toContain('STAYS_ON_ONE_CHORD');
    expect(all?.gain).toBeGreaterThan(0);
  });

  it('progressOf read backwards turns better to worse, mended to fresh, and gains to losses', () => {
    fc.assert(
      fc.property(anyMelody, anyMelody, (one, other) => {
        const scores = [scoreLine(one, chart), scoreLine(other, chart)];
        const [, on] = progressOf(scores).progress;
        const [, back] = progressOf([...scores].reverse()).progress;
        expect([back?.betterBars, back?.worseBars]).toEqual([on?.worseBars, on?.betterBars]);
        expect([back?.mended, back?.fresh]).toEqual([on?.fresh, on?.mended]);
        expect((on?.gain ?? 0) + (back?.gain ?? 0)).toBe(0);
      }),
    );
  });

  it('progressOf finds no progress between a take and itself', () => {
    fc.assert(
      fc.property(anyMelody, (line) => {
        const score = scoreLine(line, chart);
        const [, again] = progressOf([score, score]).progress;
        const none = { gain: 0, betterBars: [], worseBars: [], mended: [], fresh: [] };
        expect(again).toEqual({ total: score.total, ...none });
      }),
    );
  });

  it('progressOf has a word for a bar that changed by a fifth, and none for less', () => {
    const take = rootsIn([5, 6, 9, 10, 12]);
    const fitting = (first: number | null) => ({
      ...take,
      bars: take.bars.map((bar, at) => (at === 0 ? { ...bar, chordFit: first } : bar)),
    });
    const changed = (before: number | null, after: number | null) => {
      const [, { betterBars, worseBars } = { betterBars: [], worseBars: [] }] = progressOf([
        fitting(before),
        fitting(after),
      ]).progress;
      return [betterBars, worseBars];
    };
    expect(changed(0, 0.2)).toEqual([[1], []]);
    expect(changed(0.2, 0)).toEqual([[], [1]]);
    expect(changed(0, 0.19)).toEqual([[], []]);
    expect(changed(null, 1)).toEqual([[], []]);
    expect(changed(1, null)).toEqual([[], []]);
  });

  it('progressOf compares only bars that both takes have played', () => {
    const short = scoreLine(makeLine([{ start: 0, duration: 3840, pitch: 67 }]), chart);
    const [, second] = progressOf([short, rootsIn([5, 6, 9, 10, 12])]).progress;
    expect(second?.betterBars).toEqual([]);
  });

  it('progressOf gives frozen data', () => {
    const { takes, progress } = progressOf([rootsIn([]), rootsIn([9])]);
    const parts = progress.flatMap((each) => [each, ...Object.values(each)]);
    expect([takes, progress, ...parts].every(Object.isFrozen)).toBe(true);
  });

  it.each([undefined, null, 'takes', {}, [null], [{}], [{ total: 1, bars: [] }]])(
    'progressOf refuses %j',
    (scores) => {
      expect(() => progressOf(scores as never)).toThrow(
        expect.objectContaining({ code: 'OPTION_UNKNOWN' }),
      );
    },
  );
});

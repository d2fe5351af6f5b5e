import { makeChart, parseForm } from '@reedplate/form';
import { makeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyChart, anyMelody } from '../arbitraries.fixture.js';
import { compileChart } from './grid.js';
import { barsPlayed, partPlayed } from './played.js';
import { joinTies } from './runs.js';
import { scoreLine } from './score-line.js';

const BEAT = 960;
const BAR = 4 * BEAT;
const chart = makeChart('basic', 'G');

function played(notes: readonly { start: number; duration: number }[], on = chart) {
  const line = makeLine(notes.map((note) => ({ ...note, pitch: 67 })));
  return barsPlayed(joinTies(line, 0), compileChart(on, 'traditional'));
}

describe('barsPlayed', () => {
  it('barsPlayed counts every bar that a note sounds in, once', () => {
    expect(played([{ start: 0, duration: BEAT }])).toEqual({ bars: 1, of: 12 });
    expect(played([{ start: 3 * BEAT, duration: 2 * BEAT }])).toEqual({ bars: 2, of: 12 });
    expect(played([{ start: 0, duration: 3 * BAR }])).toEqual({ bars: 3, of: 12 });
    const twice = [0, 1, 2].map((beat) => ({ start: beat * BEAT, duration: BEAT / 2 }));
    expect(played(twice)).toEqual({ bars: 1, of: 12 });
  });

  it('barsPlayed leaves out bars without a chord and what is past the end', () => {
    const broken = makeChart(parseForm('| I7 | N.C. | IV7 |'), 'G');
    const everywhere = [{ start: 0, duration: 9 * BAR }];
    expect(played(everywhere, broken)).toEqual({ bars: 2, of: 2 });
    expect(played([{ start: BAR, duration: BEAT }], broken)).toEqual({ bars: 0, of: 2 });
    expect(played([{ start: 5 * BAR, duration: BEAT }], broken)).toEqual({ bars: 0, of: 2 });
  });

  it('barsPlayed agrees with looking at each bar by itself', () => {
    fc.assert(
      fc.property(anyMelody, anyChart, (line, on) => {
        const slowly = Array.from({ length: on.bars }, (_, bar) => bar * BAR).filter((bar) =>
          line.notes.some(({ start, duration }) => start < bar + BAR && start + duration > bar),
        );
        const { bars } = barsPlayed(joinTies(line, 0), compileChart(on, 'traditional'));
        expect(bars).toBe(slowly.length);
      }),
    );
  });
});

describe('partPlayed', () => {
  it('partPlayed is all from half of the bars on, and less in proportion', () => {
    expect([12, 6, 3, 1, 0].map((bars) => partPlayed({ bars, of: 12 }, 0.5))).toEqual([
      1,
      1,
      0.5,
      1 / 6,
      0,
    ]);
  });

  it('partPlayed is all where nothing is asked for', () => {
    expect(partPlayed({ bars: 0, of: 12 }, 0)).toBe(1);
  });
});

describe('scoreLine on little of a chart', () => {
  const one = makeLine([{ start: 0, duration: BAR, pitch: 67 }]);

  it('scoreLine does not take a single root for a chorus', () => {
    const score = scoreLine(one, chart);
    expect(score.total).toBeLessThan(20);
    expect(score.played).toBeCloseTo(1 / 12, 12);
    expect(score.measures).toMatchObject({ fit: 1, landing: 1 });
    expect(score.feedback.map(({ code, count }) => [code, count])).toEqual([
      ['BARS_NOT_PLAYED', 11],
      ['LITTLE_TO_JUDGE', 1],
    ]);
  });

  it('scoreLine counts in full again with enoughPlayed 0, and says nothing of bars', () => {
    const { total, feedback } = scoreLine(one, chart, { weights: { enoughPlayed: 0 } });
    expect(total).toBeGreaterThan(90);
    expect(feedback.map(({ code }) => code)).toEqual(['LITTLE_TO_JUDGE']);
  });

  it('scoreLine takes off nothing for a line that leaves every other bar free', () => {
    const bars = chart.spans.filter((_, index) => index % 2 === 0);
    const notes = bars.map(({ start, chord }) => ({
      start,
      duration: BEAT,
      pitch: 60 + (chord?.tones[0]?.pitchClass ?? 0),
    }));
    const { played: share, feedback } = scoreLine(makeLine(notes), chart);
    expect(share).toBe(0.5);
    expect(feedback.map(({ code }) => code)).not.toContain('BARS_NOT_PLAYED');
  });

  it('scoreLine counts as much of the same playing when it is given for another chorus', () => {
    const both = makeLine([...one.notes, { start: 12 * BAR, duration: BAR, pitch: 67 }]);
    const twice = makeChart('basic', 'G', { choruses: 2 });
    expect(scoreLine(both, twice).played).toBe(scoreLine(one, chart).played);
  });

  it('scoreLine never lowers the part that counts when more is played', () => {
    fc.assert(
      fc.property(anyMelody, anyChart, fc.nat(), (line, on, cut) => {
        const fewer = makeLine(line.notes.slice(0, 1 + (cut % line.notes.length)));
        expect(scoreLine(line, on).played).toBeGreaterThanOrEqual(scoreLine(fewer, on).played);
      }),
    );
  });
});

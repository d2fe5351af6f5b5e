import { makeChart, parseForm } from '@reedplate/form';
import { makeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyMelody } from '../arbitraries.fixture.js';
import { BEAT, play } from './play.fixture.js';
import { scoreLine } from './score-line.js';

const chart = makeChart('basic', 'G');
const BAR = 4 * BEAT;
/** The root of each chord, all through its bar. */
const roots = makeLine(
  chart.spans.map(({ start, end, chord }) => ({
    start,
    duration: end - start,
    pitch: { G: 67, C: 72, D: 74 }[chord?.root as 'G' | 'C' | 'D'],
  })),
);
const anyBars = fc
  .tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 12 }))
  .map(([a, b]): [number, number] => [Math.min(a, b), Math.max(a, b)]);

describe('bars of a score', () => {
  it('a note counts in the bars in which it sounds, after a pickup too', () => {
    const late = makeChart('basic', 'G', { pickup: 2 * BEAT });
    // Half of it in bar 1 and half in bar 2, and a note that has bar 3 to itself.
    const notes = [
      { start: 4 * BEAT, duration: BAR, pitch: 67 },
      { start: 2 * BEAT + 2 * BAR, duration: BAR, pitch: 67 },
    ];
    const { bars } = scoreLine(makeLine(notes, { pickup: 2 * BEAT }), late);
    expect(bars.slice(0, 4).map((bar) => bar.notes)).toEqual([1, 1, 1, 0]);
  });
});

describe('a count-in', () => {
  it('is taken off before the take is judged', () => {
    const later = makeLine(roots.notes.map((note) => ({ ...note, start: note.start + BAR })));
    const { total, bars } = scoreLine(later, chart, { countIn: 1 });
    expect(total).toBe(scoreLine(roots, chart).total);
    expect(bars.map(({ chordFit }) => chordFit)).toEqual(
      scoreLine(roots, chart).bars.map(({ chordFit }) => chordFit),
    );
  });
});

describe('scoreLine of some bars', () => {
  it('scoreLine judges in the bars asked for as in the whole take, and in no other', () => {
    const whole = scoreLine(roots, chart);
    fc.assert(
      fc.property(anyBars, ([from, to]) => {
        const { bars } = scoreLine(roots, chart, { bars: [from, to] });
        for (const { bar, chordFit, notes } of bars) {
          const isAsked = bar >= from && bar <= to;
          const before = whole.bars[bar - 1];
          expect([bar, chordFit]).toEqual([bar, isAsked ? before?.chordFit : null]);
          expect(notes > 0).toBe(isAsked);
        }
      }),
    );
  });

  it('scoreLine of all bars asked for says what it says without', () => {
    fc.assert(
      fc.property(anyMelody, (line) => {
        fc.pre(line.notes.every(({ start, duration }) => start + duration <= 12 * BAR));
        const { total, bars } = scoreLine(line, chart, { bars: [1, 12] });
        const whole = scoreLine(line, chart);
        expect([total, bars]).toEqual([whole.total, whole.bars]);
      }),
    );
  });

  it('scoreLine does not mind what is wrong in other bars', () => {
    const spoilt = makeLine(
      roots.notes.map((note) => (note.start < 4 * BAR ? { ...note, pitch: note.pitch + 1 } : note)),
    );
    const good = scoreLine(roots, chart, { bars: [5, 8] });
    const same = scoreLine(spoilt, chart, { bars: [5, 8] });
    expect([same.total, same.bars]).toEqual([good.total, good.bars]);
    expect(scoreLine(spoilt, chart).measures.chordFit).toBeLessThan(1);
  });

  it('scoreLine counts a push into the first bar asked for, and not what lies before', () => {
    const pushed = play('G4@0/15.5 C5@15.5/4.5');
    const { notes } = scoreLine(pushed, chart, { bars: [5, 5] });
    expect(notes.map(({ chord, degree }) => [chord, degree])).toContainEqual(['C7', '1']);
    const early = play('G4@0/2 C5@13/1');
    expect(scoreLine(early, chart, { bars: [5, 5] }).bars[4]?.notes).toBe(0);
  });

  it('scoreLine leaves out notes outside the bars without a remark on them', () => {
    const codes = (bars?: [number, number]) =>
      scoreLine(roots, chart, bars === undefined ? {} : { bars }).feedback.map(({ code }) => code);
    expect(codes([1, 4])).not.toContain('NOTES_OUTSIDE_CHART');
    expect(codes()).not.toContain('NOTES_OUTSIDE_CHART');
  });

  it('scoreLine judges nothing in bars without a chord', () => {
    const stops = makeChart(parseForm('I7 | N.C. | IV7 | I7'), 'G');
    const { total, notes } = scoreLine(play('G4@0/4 B4@4/4 C5@8/4 G4@12/4'), stops, {
      bars: [2, 2],
    });
    expect(total).toBe(0);
    expect(notes.filter(({ class: kind }) => kind !== 'unjudged')).toEqual([]);
  });

  it.each([
    [[0, 4]],
    [[1, 13]],
    [[5, 4]],
    [[1.5, 2]],
    [[1, Number.NaN]],
    [[4]],
    [[1, 2, 3]],
    [['1', '2']],
    ['5-8'],
    [null],
    [{ from: 1, to: 2 }],
  ])('scoreLine refuses the bars %j', (bars) => {
    expect(() => scoreLine(roots, chart, { bars: bars as unknown as [number, number] })).toThrow(
      expect.objectContaining({ code: 'NUMBER_RANGE', where: { path: 'bars' } }),
    );
  });
});

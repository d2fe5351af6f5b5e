import { makeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyChart, anyMelody, anyNotes } from '../arbitraries.fixture.js';
import { compileChart } from './grid.js';
import { judgePieces } from './judge.js';
import { weightedFit } from './measures.js';
import { CLASS } from './note-class.js';
import { cutPieces, type Pieces } from './pieces.js';
import { joinTies, type Runs } from './runs.js';
import { scoreLine } from './score-line.js';
import { SCORE_WEIGHTS } from './weights.js';

const OPTIONS = { pushWithin: 0.5, swing: 1 };

function placesOf({ count }: { readonly count: number }): readonly number[] {
  return Array.from({ length: count }, (_, index) => index);
}

describe('joinTies', () => {
  it('joinTies keeps the time that sounds at each pitch', () => {
    fc.assert(
      fc.property(anyNotes, (line) => {
        const runs = joinTies(line, 0);
        const heard = placesOf(runs).reduce(
          (sum, run) => sum + (runs.end[run] ?? 0) - (runs.start[run] ?? 0),
          0,
        );
        expect(heard).toBe(line.notes.reduce((sum, { duration }) => sum + duration, 0));
      }),
    );
  });

  it('joinTies leaves no two runs of a pitch that touch', () => {
    fc.assert(
      fc.property(anyMelody, (line) => {
        const runs = joinTies(line, 0);
        const ends = new Set(placesOf(runs).map((run) => `${runs.pitch[run]} ${runs.end[run]}`));
        for (const run of placesOf(runs))
          expect(ends.has(`${runs.pitch[run]} ${runs.start[run]}`)).toBe(false);
      }),
    );
  });
});

describe('cutPieces', () => {
  const cut = (runs: Runs, chart: Parameters<typeof compileChart>[0]): Pieces =>
    cutPieces(runs, compileChart(chart, 'traditional'), OPTIONS);

  it('cutPieces divides each run without gap, as far as the chart goes', () => {
    fc.assert(
      fc.property(anyNotes, anyChart, (line, chart) => {
        const runs = joinTies(line, 0);
        const pieces = cut(runs, chart);
        const end = chart.spans.at(-1)?.end ?? 0;
        for (const run of placesOf(runs)) {
          const [first, past] = [pieces.first[run] ?? 0, pieces.first[run + 1] ?? 0];
          if (first === past) {
            expect(runs.start[run]).toBeGreaterThanOrEqual(end);
            continue;
          }
          expect(pieces.start[first]).toBe(runs.start[run]);
          expect(pieces.end[past - 1]).toBe(Math.min(runs.end[run] ?? 0, end));
          for (let piece = first + 1; piece < past; piece += 1) {
            expect(pieces.start[piece]).toBe(pieces.end[piece - 1]);
          }
        }
      }),
    );
  });

  it('cutPieces puts each piece within one change', () => {
    fc.assert(
      fc.property(anyNotes, anyChart, (line, chart) => {
        const { changes } = compileChart(chart, 'traditional');
        const pieces = cut(joinTies(line, 0), chart);
        for (const piece of placesOf(pieces)) {
          const change = changes[pieces.change[piece] ?? -1];
          expect(pieces.start[piece]).toBeGreaterThanOrEqual(change?.start ?? 0);
          expect(pieces.end[piece]).toBeLessThanOrEqual(change?.end ?? Number.POSITIVE_INFINITY);
        }
      }),
    );
  });
});

describe('findResolutions', () => {
  /** The definition, looked up the slow way: a step, to a chord tone, struck next, within a beat. */
  function resolvesSlowly(
    line: ReturnType<typeof makeLine>,
    chart: Parameters<typeof scoreLine>[1],
  ): readonly boolean[] {
    const { notes } = scoreLine(line, chart, { swing: 1 });
    const struck = notes.filter(({ held }) => !held);
    const isTone = (kind: string): boolean => ['root', 'guide-tone', 'chord-tone'].includes(kind);
    return notes.map((note) => {
      const after = struck.find((other) => other.start > note.start && other.index > note.index);
      const isLast = !notes.some(
        (other) => other.held && other.index === note.index && other.start > note.start,
      );
      if (after === undefined || !isLast || isTone(note.class) || note.class === 'unjudged')
        return false;
      const step = Math.abs(after.pitch - note.pitch);
      return step >= 1 && step <= 2 && isTone(after.class) && after.start - note.start <= 960;
    });
  }

  it('findResolutions agrees with the definition on every melody', () => {
    fc.assert(
      fc.property(anyMelody, anyChart, (line, chart) => {
        const found = scoreLine(line, chart, { swing: 1 }).notes.map(
          ({ resolvesTo }) => resolvesTo !== null,
        );
        expect(found).toEqual(resolvesSlowly(line, chart));
      }),
    );
  });
});

describe('judgePieces', () => {
  it('judgePieces credits every class as the weights say, and more only where it resolves', () => {
    fc.assert(
      fc.property(anyNotes, anyChart, (line, chart) => {
        for (const { class: kind, credit, resolvesTo } of scoreLine(line, chart).notes) {
          const plain = SCORE_WEIGHTS.credit[kind];
          const resolved = Math.max(plain, SCORE_WEIGHTS.resolvedCredit);
          expect(credit).toBe(resolvesTo === null || kind === 'unjudged' ? plain : resolved);
        }
      }),
    );
  });

  it('judgePieces weighs nothing that it does not judge, and all else', () => {
    fc.assert(
      fc.property(anyNotes, anyChart, (line, chart) => {
        const grid = compileChart(chart, 'traditional');
        const runs = joinTies(line, 0);
        const judged = judgePieces(runs, cutPieces(runs, grid, OPTIONS), grid, SCORE_WEIGHTS);
        for (const piece of placesOf(judged.pieces)) {
          expect(judged.weight[piece] === 0).toBe(judged.class[piece] === CLASS.unjudged);
        }
        const fit = weightedFit(judged);
        expect(fit === null || (fit >= 0 && fit <= 1)).toBe(true);
      }),
    );
  });
});

describe('scoreBars', () => {
  it('scoreBars adds up to the fit of the whole', () => {
    fc.assert(
      fc.property(anyMelody, anyChart, (line, chart) => {
        const { bars, measures, notes } = scoreLine(line, chart);
        const judged = notes.filter((note) => note.class !== 'unjudged');
        const whole = judged.reduce((sum, { weight, credit }) => sum + weight * credit, 0);
        const weight = judged.reduce((sum, note) => sum + note.weight, 0);
        expect(measures.fit ?? 0).toBeCloseTo(weight === 0 ? 0 : whole / weight, 9);
        for (const { fit, notes: count } of bars) expect(fit === null).toBe(count === 0);
      }),
    );
  });
});

describe('scoreChanges', () => {
  it('scoreChanges lands on a note of its own chord, not later than a beat', () => {
    fc.assert(
      fc.property(anyMelody, anyChart, (line, chart) => {
        const { changes, notes } = scoreLine(line, chart);
        for (const { index, chord, class: kind } of changes) {
          if (index === null) continue;
          const same = notes.filter((note) => note.index === index && note.chord === chord);
          expect(same.map((note) => note.class)).toContain(kind);
        }
      }),
    );
  });
});

describe('feedbackOn', () => {
  it('feedbackOn gives its remarks in the order of time, those on the whole line last', () => {
    fc.assert(
      fc.property(anyNotes, anyChart, (line, chart) => {
        const { feedback } = scoreLine(line, chart);
        const ofTheWhole = ['NOTES_OUTSIDE_CHART', 'BARS_NOT_PLAYED', 'LITTLE_TO_JUDGE'];
        const whole = feedback.findIndex(({ code }) => ofTheWhole.includes(code));
        const timed = whole === -1 ? feedback : feedback.slice(0, whole);
        const times = timed.map(({ bar, beat }) => bar * 100 + beat);
        expect(times).toEqual([...times].sort((a, b) => a - b));
        for (const { code } of timed) expect(ofTheWhole).not.toContain(code);
      }),
    );
  });

  it('feedbackOn suggests chord tones only', () => {
    fc.assert(
      fc.property(anyMelody, anyChart, (line, chart) => {
        for (const { suggestion, chord } of scoreLine(line, chart).feedback) {
          if (suggestion === null) continue;
          const parsed = chart.spans.find((span) => span.chord?.symbol === chord)?.chord;
          const tones = parsed?.tones.map(({ pitchClass }) => pitchClass);
          expect(tones).toContain(suggestion.pitch % 12);
          expect(['1', 'b3', '3', 'b7', '7']).toContain(suggestion.degree);
        }
      }),
    );
  });
});

describe('measures of scoreLine', () => {
  it('measures of scoreLine keep guide tones within chord tones', () => {
    fc.assert(
      fc.property(anyNotes, anyChart, (line, chart) => {
        const { chordToneShare, guideToneShare } = scoreLine(line, chart).measures;
        expect(guideToneShare ?? 0).toBeLessThanOrEqual((chordToneShare ?? 0) + 1e-12);
      }),
    );
  });

  it('measures of scoreLine have perfect timing for a line on the grid of sixteenths', () => {
    fc.assert(
      fc.property(anyMelody, anyChart, (line, chart) => {
        expect(scoreLine(line, chart, { swing: 1 }).measures.timing ?? 1).toBeCloseTo(1, 9);
      }),
    );
  });

  it('measures of scoreLine do not change when the whole line is late and the latency is taken off', () => {
    fc.assert(
      fc.property(anyMelody, anyChart, fc.integer({ min: 1, max: 200 }), (line, chart, latency) => {
        const late = makeLine(line.notes.map((note) => ({ ...note, start: note.start + latency })));
        const before = scoreLine(line, chart, { swing: 1 });
        const after = scoreLine(late, chart, { swing: 1, latency });
        expect(after.measures).toEqual(before.measures);
        expect(after.total).toBe(before.total);
      }),
    );
  });
});

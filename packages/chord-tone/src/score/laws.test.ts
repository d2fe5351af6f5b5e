import { makeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyChart, anyMelody, anyNotes } from '../arbitraries.fixture.js';
import { type Cut, cutNotes } from './cut-notes.js';
import { compileChart } from './grid.js';
import { placeNotes } from './place-notes.js';
import { scoreLine } from './score-line.js';
import type { NoteScore } from './score-types.js';
import { hearNotes } from './sounded.js';
import { SCORE_WEIGHTS } from './weights.js';

describe('hearNotes', () => {
  it('hearNotes keeps the time that sounds at each pitch', () => {
    fc.assert(
      fc.property(anyNotes, (line) => {
        const heard = hearNotes(line, 0).reduce((sum, { start, end }) => sum + end - start, 0);
        expect(heard).toBe(line.notes.reduce((sum, { duration }) => sum + duration, 0));
      }),
    );
  });

  it('hearNotes leaves no two notes of a pitch that touch', () => {
    fc.assert(
      fc.property(anyMelody, (line) => {
        const notes = hearNotes(line, 0);
        const ends = new Set(notes.map(({ pitch, end }) => `${pitch} ${end}`));
        for (const { pitch, start } of notes) expect(ends.has(`${pitch} ${start}`)).toBe(false);
      }),
    );
  });
});

describe('cutNotes', () => {
  /** The cuts of every note. */
  function cutAll(
    line: Parameters<typeof scoreLine>[0],
    chart: Parameters<typeof compileChart>[0],
  ): readonly (readonly Cut[])[] {
    const grid = compileChart(chart, 'blues');
    const notes = placeNotes(hearNotes(line, 0), grid, 1);
    const cuts = cutNotes(notes, grid, SCORE_WEIGHTS);
    return notes.map(({ place }) => cuts.filter(({ note }) => note.place === place));
  }

  it('cutNotes divides each note without gap, as far as the chart goes', () => {
    fc.assert(
      fc.property(anyNotes, anyChart, (line, chart) => {
        const end = chart.spans.at(-1)?.end ?? 0;
        for (const [at, parts] of cutAll(line, chart).entries()) {
          const note = hearNotes(line, 0)[at];
          if (parts.length === 0) expect(note?.start).toBeGreaterThanOrEqual(end);
          else {
            expect(parts[0]?.start).toBe(note?.start);
            expect(parts.at(-1)?.end).toBe(Math.min(note?.end ?? 0, end));
          }
          parts.forEach((part, index) => {
            if (index > 0) expect(part.start).toBe(parts[index - 1]?.end);
            expect([part.held, part.last]).toEqual([index > 0, index === parts.length - 1]);
          });
        }
      }),
    );
  });

  it('cutNotes puts each part within one change', () => {
    fc.assert(
      fc.property(anyNotes, anyChart, (line, chart) => {
        const { changes } = compileChart(chart, 'blues');
        for (const { start, end, clock } of cutAll(line, chart).flat()) {
          expect(start).toBeGreaterThanOrEqual(changes[clock]?.start ?? 0);
          expect(end).toBeLessThanOrEqual(changes[clock]?.end ?? Number.POSITIVE_INFINITY);
        }
      }),
    );
  });
});

describe('resolutionOf', () => {
  const isTone = (kind: string): boolean => ['root', 'guide-tone', 'chord-tone'].includes(kind);

  /** The definition, looked up the slow way from what is struck next. */
  function resolvesSlowly(
    line: ReturnType<typeof makeLine>,
    chart: Parameters<typeof scoreLine>[1],
  ): readonly boolean[] {
    const { notes } = scoreLine(line, chart, { swing: 1 });
    const struck = notes.filter(({ held }) => !held);
    const byIndex = new Map(struck.map((note) => [note.index, note]));
    const isLast = ({ index, start }: NoteScore): boolean =>
      !notes.some((other) => other.held && other.index === index && other.start > start);
    const nextOf = (note: NoteScore): NoteScore | undefined =>
      isLast(note) && !isTone(note.class)
        ? struck.find((other) => other.start > note.start && other.index > note.index)
        : undefined;
    return notes.map((note) => {
      const after = nextOf(note);
      if (after === undefined) return false;
      const step = Math.abs(after.pitch - note.pitch);
      const isNear = after.start - note.start <= 960;
      if (isTone(after.class)) return step >= 1 && step <= 2 && isNear;
      const target = byIndex.get(after.resolvesTo ?? -1);
      return target !== undefined && resolvesThrough(note, after, target);
    });
  }

  /** Through a repetition, a second passing note, or the other side of an enclosure. */
  function resolvesThrough(note: NoteScore, after: NoteScore, target: NoteScore): boolean {
    const wait = target.start - note.start;
    const [first, then] = [after.pitch - note.pitch, target.pitch - after.pitch];
    const isRun = first * then > 0 && Math.abs(first) <= 2 && Math.abs(then) <= 2;
    if (first === 0 || isRun) return wait <= 2 * 960;
    return wait <= 960 && Math.abs(first + then) <= 2 && (first + then) * then < 0;
  }

  it('resolutionOf agrees with the definition on every melody', () => {
    fc.assert(
      fc.property(anyMelody, anyChart, (line, chart) => {
        const notes = line.notes.filter(({ start }) => start < (chart.spans.at(-1)?.end ?? 0));
        fc.pre(notes.length > 0);
        const found = scoreLine(makeLine(notes), chart, { swing: 1 }).notes.map(
          ({ resolvesTo }) => resolvesTo !== null,
        );
        expect(found).toEqual(resolvesSlowly(makeLine(notes), chart));
      }),
    );
  });
});

describe('judgeNotes', () => {
  it('judgeNotes credits every class as the weights say, and more only where it resolves', () => {
    fc.assert(
      fc.property(anyNotes, anyChart, (line, chart) => {
        for (const { class: kind, credit, resolvesTo } of scoreLine(line, chart).notes) {
          const plain = SCORE_WEIGHTS.credit[kind];
          const resolved = Math.max(plain, SCORE_WEIGHTS.resolvedCredit);
          const isPlain = resolvesTo === null || kind === 'unjudged' || kind === 'leaning';
          expect(credit).toBe(isPlain ? plain : resolved);
        }
      }),
    );
  });

  it('judgeNotes weighs nothing that it does not judge, and all else', () => {
    fc.assert(
      fc.property(anyNotes, anyChart, (line, chart) => {
        const { notes, measures } = scoreLine(line, chart);
        for (const note of notes) expect(note.weight === 0).toBe(note.class === 'unjudged');
        const { chordFit } = measures;
        expect(chordFit === null || (chordFit >= 0 && chordFit <= 1)).toBe(true);
      }),
    );
  });
});

describe('scoreBars', () => {
  it('scoreBars adds up to the chord fit of the whole', () => {
    fc.assert(
      fc.property(anyMelody, anyChart, (line, chart) => {
        const { bars, measures, notes } = scoreLine(line, chart);
        const judged = notes.filter((note) => note.class !== 'unjudged');
        const whole = judged.reduce((sum, { weight, credit }) => sum + weight * credit, 0);
        const weight = judged.reduce((sum, note) => sum + note.weight, 0);
        expect(measures.chordFit ?? 0).toBeCloseTo(weight === 0 ? 0 : whole / weight, 9);
        for (const { chordFit, notes: count } of bars) expect(chordFit === null).toBe(count === 0);
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
  it('feedbackOn gives at most five remarks, each of them once', () => {
    fc.assert(
      fc.property(anyNotes, anyChart, (line, chart) => {
        const { feedback } = scoreLine(line, chart);
        expect(feedback.length).toBeLessThanOrEqual(5);
        const said = feedback.map(({ code, chord, name }) =>
          [code, chord, name?.replace(/-?\d+$/u, '')].join(' '),
        );
        expect(new Set(said).size).toBe(said.length);
      }),
    );
  });

  it('feedbackOn suggests chord tones only', () => {
    fc.assert(
      fc.property(anyMelody, anyChart, (line, chart) => {
        for (const { suggestions } of scoreLine(line, chart).feedback) {
          for (const { chord, pitch, degree } of suggestions) {
            const parsed = chart.spans.find((span) => span.chord?.symbol === chord)?.chord;
            const tones = parsed?.tones.map(({ pitchClass }) => pitchClass);
            expect(tones).toContain(pitch % 12);
            expect(['1', 'b3', '3', 'b7', '7']).toContain(degree);
          }
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

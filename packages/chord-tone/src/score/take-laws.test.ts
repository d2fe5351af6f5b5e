import { FORMS, makeChart } from '@reedplate/form';
import { type Line, makeLine, type TimedNote } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyChart, anyMelody, anyTonic } from '../arbitraries.fixture.js';
import { isChordTone } from './note-class.js';
import { scoreLine } from './score-line.js';
import type { Score } from './score-types.js';

const anyForm = fc.constantFrom(
  ...FORMS.filter(({ metre }) => metre === '4/4').map(({ id }) => id),
);

/** Ticks of a chorus of any form in 4/4. */
const chorusOf = ({ bars }: { readonly bars: number }): number => bars * 3840;

function within(line: Line, ticks: number): readonly TimedNote[] {
  return line.notes.filter(({ start, duration }) => start + duration <= ticks);
}

/** A half step in front of notes, on the beat or before it, its time taken from its own note or the one before. */
function graced(
  { notes }: Line,
  which: readonly boolean[],
  length: number,
  isOnBeat: boolean,
): Line {
  const all = notes.map((note) => ({ ...note }));
  const graces: TimedNote[] = [];
  for (const [at, note] of all.entries()) {
    const before = all[at - 1];
    const start = isOnBeat ? note.start : note.start - length;
    const touches = before !== undefined && before.start + before.duration >= note.start;
    const isRepeat = touches && before.pitch === note.pitch;
    if (which[at % which.length] !== true || start < 0 || isRepeat) continue;
    const pitch = before?.pitch === note.pitch - 1 ? note.pitch + 1 : note.pitch - 1;
    graces.push({ start, duration: length, pitch });
    if (isOnBeat) all[at] = { ...note, start: start + length, duration: note.duration - length };
    else if (touches) all[at - 1] = { ...before, duration: start - before.start };
  }
  return makeLine([...all, ...graces]);
}

describe('scoreLine and grace notes', () => {
  it('scoreLine gives the same total, measures and notes with grace notes and without', () => {
    const which = fc.array(fc.boolean(), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(
        anyMelody,
        anyChart,
        which,
        fc.integer({ min: 10, max: 60 }),
        fc.boolean(),
        (line, chart, at, length, isOnBeat) => {
          const plain = scoreLine(line, chart);
          const ornate = scoreLine(graced(line, at, length, isOnBeat), chart);
          const classes = ({ notes }: Score) => notes.map((note) => [note.class, note.weight]);
          expect(ornate.total).toBeCloseTo(plain.total, 9);
          expect(ornate.measures).toEqual(plain.measures);
          expect(classes(ornate)).toEqual(classes(plain));
        },
      ),
    );
  });
});

describe('scoreLine and choruses that are not played', () => {
  it('scoreLine gives the same total for a take and the same take a whole chorus later', () => {
    fc.assert(
      fc.property(
        anyMelody,
        anyForm,
        anyTonic,
        fc.integer({ min: 1, max: 3 }),
        (line, form, key, choruses) => {
          const chart = makeChart(form, key);
          const notes = within(line, chorusOf(chart));
          fc.pre(notes.length > 0);
          const by = choruses * chorusOf(chart);
          const later = notes.map((note) => ({ ...note, start: note.start + by }));
          const [one, other] = [
            scoreLine(makeLine(notes), chart),
            scoreLine(makeLine(later), chart),
          ];
          expect(other.total).toBeCloseTo(one.total, 9);
          expect(other.verdict).toEqual(one.verdict);
          expect(other.feedback).toEqual(one.feedback);
        },
      ),
    );
  });

  it('scoreLine never raises the total for more silence after the same notes', () => {
    fc.assert(
      fc.property(anyMelody, anyForm, anyTonic, (line, form, key) => {
        const notes = within(line, chorusOf(makeChart(form, key)));
        fc.pre(notes.length > 0);
        let before = Number.POSITIVE_INFINITY;
        for (const choruses of [1, 2, 3, 4]) {
          const { total } = scoreLine(makeLine(notes), makeChart(form, key, { choruses }));
          expect(total).toBeLessThanOrEqual(before + 1e-9);
          before = total;
        }
      }),
    );
  });

  // Of other lines this cannot be asked: a rest in place of a wrong note is better, as a teacher says.
  it('scoreLine never raises the total of chord tones for notes that are left out', () => {
    fc.assert(
      fc.property(anyChart, fc.array(fc.nat(), { minLength: 1, maxLength: 40 }), (chart, picks) => {
        const full = chart.spans.flatMap(({ start, end, chord }, at): readonly TimedNote[] => {
          const tones = chord?.tones.filter(({ degree }) => !/(?:9|1[13])$/u.test(degree)) ?? [];
          const tone = tones[(picks[at % picks.length] ?? 0) % Math.max(1, tones.length)];
          return tone === undefined
            ? []
            : [{ start, duration: end - start - 60, pitch: 60 + tone.pitchClass }];
        });
        const fewer = full.filter((_, at) => (picks[at % picks.length] ?? 0) % 3 > 0);
        fc.pre(fewer.length > 0);
        const [all, some] = [scoreLine(makeLine(full), chart), scoreLine(makeLine(fewer), chart)];
        expect(some.total).toBeLessThanOrEqual(all.total + 1e-9);
      }),
    );
  });
});

describe('scoreLine and octaves of single notes', () => {
  // A note outside the chord resolves by step, and a seventh down is no step up: of such notes, and of what
  // chance would step to, the octave is part of what was played.
  it('scoreLine gives the same chord fit for chord tones in any octave that no step leads to', () => {
    fc.assert(
      fc.property(
        anyMelody,
        anyChart,
        fc.nat(),
        fc.constantFrom(-12, 12),
        (line, chart, which, by) => {
          const before = scoreLine(line, chart, { swing: 1 });
          const at = which % line.notes.length;
          const [last, note, next] = [line.notes[at - 1], line.notes[at], line.notes[at + 1]];
          const isTone = (index: number) =>
            before.notes
              .filter((one) => one.index === index)
              .every((one) => isChordTone(one.class));
          fc.pre(note !== undefined && isTone(at) && (at === 0 || isTone(at - 1)));
          const names = [last, next].map((one) => one && one.pitch % 12);
          fc.pre(!names.includes((note?.pitch ?? 0) % 12));
          const notes = line.notes.map((one, place) =>
            place === at ? { ...one, pitch: one.pitch + by } : one,
          );
          const after = scoreLine(makeLine(notes), chart, { swing: 1 });
          expect(after.measures.chordFit).toBe(before.measures.chordFit);
          expect(after.measures.landing).toBe(before.measures.landing);
          expect(after.measures.coverage).toBe(before.measures.coverage);
        },
      ),
    );
  });
});

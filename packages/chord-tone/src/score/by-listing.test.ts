import { type Chart, makeChart } from '@reedplate/form';
import { type Line, makeLine, parseMetre } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyChart, anyMelody, anyNotes } from '../arbitraries.fixture.js';
import { scoreLine } from './score-line.js';
import type { NoteScore } from './score-types.js';
import { SCORE_WEIGHTS } from './weights.js';

// Bars, changes and parts of a score, worked out again from its notes the long way.

/** Any line that is over when its chart is: a longer one goes round. */
function within(line: Line, { spans }: Chart): Line {
  const end = spans.at(-1)?.end ?? 0;
  const notes = line.notes.filter(({ start }) => start < end);
  fc.pre(notes.length > 0);
  return makeLine(notes);
}

const barTicksOf = ({ metre }: Chart): number => parseMetre(metre).barTicks;

/** Where a note counts from: a push from the beginning of the chord it belongs to. */
function countsFrom({ push, start, chord }: NoteScore, { spans }: Chart): number {
  if (!push) return start;
  return spans.find((span) => span.start > start && span.chord?.symbol === chord)?.start ?? start;
}

interface Share {
  readonly bar: number;
  readonly weight: number;
  readonly credit: number;
}

/** The weight of a note bar by bar: its beats where they sound, its being struck where it begins. */
function sharesOf(note: NoteScore, chart: Chart): readonly Share[] {
  const barTicks = barTicksOf(chart);
  const { beatTicks } = parseMetre(chart.metre);
  const from = countsFrom(note, chart);
  const end = Math.max(note.start + note.duration, from + 1);
  const first = Math.floor((from - chart.pickup) / barTicks);
  const shares: Share[] = [];
  let left = note.weight;
  for (let bar = first; left > 0; bar += 1) {
    const after = Math.max(0, end - (chart.pickup + (bar + 1) * barTicks)) / beatTicks;
    shares.push({ bar: bar + 1, weight: left - after, credit: note.credit });
    left = after;
  }
  return shares;
}

describe('bars of scoreLine by listing', () => {
  it('bars of scoreLine are the mean credit of what sounds in each, by weight', () => {
    fc.assert(
      fc.property(fc.oneof(anyMelody, anyNotes), anyChart, (line, chart) => {
        const { bars, notes } = scoreLine(within(line, chart), chart, { swing: 1 });
        const shares = notes.flatMap((note) => sharesOf(note, chart));
        for (const { bar, chordFit, notes: count } of bars) {
          const here = shares.filter((share) => share.bar === bar);
          const weight = here.reduce((sum, share) => sum + share.weight, 0);
          const credit = here.reduce((sum, share) => sum + share.weight * share.credit, 0);
          expect(count).toBe(here.length);
          expect(chordFit ?? -1).toBeCloseTo(weight === 0 ? -1 : credit / weight, 9);
        }
      }),
    );
  });

  it('bars of scoreLine name the chords of the chart, one entry a bar', () => {
    fc.assert(
      fc.property(anyMelody, anyChart, (line, chart) => {
        const { bars } = scoreLine(within(line, chart), chart);
        expect(bars.map(({ bar }) => bar)).toEqual(bars.map((_, at) => at + 1));
        for (const { bar, chords } of bars) {
          const spans = chart.spans.filter((span) => span.bar === bar && span.chord !== null);
          expect(chords).toEqual(spans.map(({ chord }) => chord?.symbol));
        }
      }),
    );
  });
});

/** The chords of a chart where they change, each once while it stays in one chorus. */
function changesOf({ spans }: Chart): readonly Chart['spans'][number][] {
  return spans.filter((span, at) => {
    const before = spans[at - 1];
    const goesOn = before?.chord?.symbol === span.chord?.symbol && before?.chorus === span.chorus;
    return span.chord !== null && !goesOn;
  });
}

describe('changes of scoreLine by listing', () => {
  it('changes of scoreLine land on the first note that is there within a beat, the best of a chord', () => {
    fc.assert(
      fc.property(fc.oneof(anyMelody, anyNotes), anyChart, (line, chart) => {
        const { beatTicks } = parseMetre(chart.metre);
        const { changes, notes } = scoreLine(within(line, chart), chart, { swing: 1 });
        const spans = changesOf(chart);
        expect(changes.map(({ bar, beat, chord }) => [bar, beat, chord])).toEqual(
          spans.map(({ bar, beat, chord }) => [bar, beat, chord?.symbol]),
        );
        changes.forEach((change, at) => {
          const start = spans[at]?.start ?? 0;
          const end = spans[at + 1]?.start ?? Number.POSITIVE_INFINITY;
          const near = notes.filter((note) => {
            const from = countsFrom(note, chart);
            const isHere = note.chord === change.chord && from >= start && from < end;
            return isHere && note.start <= start + beatTicks && note.duration >= beatTicks / 8;
          });
          const first = Math.min(...near.map((note) => note.start));
          const worth = near
            .filter((note) => note.start === first)
            .map((note) => SCORE_WEIGHTS.landing[note.class]);
          expect(change.landing).toBe(worth.length === 0 ? null : Math.max(...worth));
        });
      }),
    );
  });

  it('changes of scoreLine land on a push before a note that is held over the change', () => {
    const chart = makeChart('basic', 'G');
    const line = makeLine([
      { start: 15000, duration: 3000, pitch: 66 },
      { start: 15120, duration: 120, pitch: 76 },
    ]);
    const toC = scoreLine(within(line, chart), chart, { swing: 1 }).changes.find(
      ({ bar }) => bar === 5,
    );
    expect(toC).toMatchObject({ chord: 'C7', class: 'guide-tone', landing: 1, index: 1 });
  });

  it('changes of scoreLine are shown by the root, or by a tone that the chord before did not have', () => {
    const isOwn = (degree: string): boolean => !/(?:9|1[13])$/u.test(degree);
    const tonesOf = (span: Chart['spans'][number] | undefined): ReadonlySet<number> =>
      new Set(
        span?.chord?.tones
          .filter(({ degree }) => isOwn(degree))
          .map(({ pitchClass }) => pitchClass),
      );
    fc.assert(
      fc.property(anyMelody, anyChart, (line, chart) => {
        const { changes, notes } = scoreLine(within(line, chart), chart, { swing: 1 });
        const spans = changesOf(chart);
        changes.forEach((change, at) => {
          const before = tonesOf(spans.at(at - 1));
          const fresh = [...tonesOf(spans[at])].filter((tone) => !before.has(tone));
          const start = spans[at]?.start ?? 0;
          const end = spans[at + 1]?.start ?? Number.POSITIVE_INFINITY;
          const heard = notes
            .filter((note) => note.chord === change.chord)
            .filter((note) => countsFrom(note, chart) >= start && countsFrom(note, chart) < end)
            .map(({ pitch }) => pitch % 12);
          const byTone =
            heard.length === 0 || fresh.length === 0
              ? null
              : fresh.some((tone) => heard.includes(tone));
          expect(change.shown).toBe(change.class === 'root' ? true : byTone);
        });
      }),
    );
  });
});

describe('notes of scoreLine by listing', () => {
  it('notes of scoreLine sound as long as the line does within the chart, each tick once', () => {
    fc.assert(
      fc.property(fc.oneof(anyMelody, anyNotes), anyChart, (line, chart) => {
        const { notes } = scoreLine(within(line, chart), chart, { swing: 1 });
        const end = chart.spans.at(-1)?.end ?? 0;
        const heard = line.notes.reduce(
          (sum, { start, duration }) => sum + Math.max(0, Math.min(end, start + duration) - start),
          0,
        );
        expect(notes.reduce((sum, { duration }) => sum + duration, 0)).toBe(heard);
      }),
    );
  });

  it('notes of scoreLine have their bar and beat where barTicks and beatTicks put them', () => {
    fc.assert(
      fc.property(anyNotes, anyChart, (line, chart) => {
        const { barTicks, beatTicks } = parseMetre(chart.metre);
        for (const { bar, beat, start } of scoreLine(within(line, chart), chart).notes) {
          expect((bar - 1) * barTicks + (beat - 1) * beatTicks).toBeCloseTo(start, 6);
          expect(beat).toBeGreaterThanOrEqual(1);
          expect(beat).toBeLessThan(1 + barTicks / beatTicks);
        }
      }),
    );
  });

  it('notes of scoreLine resolve by a step, forwards, to a tone of the chord it is then', () => {
    fc.assert(
      fc.property(anyNotes, anyChart, (line, chart) => {
        const { notes } = scoreLine(within(line, chart), chart, { swing: 1 });
        const tones = new Set(['root', 'guide-tone', 'chord-tone']);
        for (const { resolvesTo, pitch, start } of notes) {
          if (resolvesTo === null) continue;
          const target = notes.find(({ index, held }) => index === resolvesTo && !held);
          const step = Math.abs((target?.pitch ?? 0) - pitch);
          expect(step === 1 || step === 2).toBe(true);
          expect((target?.start ?? 0) - start).toBeGreaterThan(0);
          // Through its repetition a note has twice the time.
          expect((target?.start ?? 0) - start).toBeLessThanOrEqual(
            2 * parseMetre(chart.metre).beatTicks,
          );
          expect(tones).toContain(target?.class);
        }
      }),
    );
  });
});

describe('played of scoreLine by listing', () => {
  it('played of scoreLine is what is left when runs of three and more empty bars are taken off', () => {
    fc.assert(
      fc.property(fc.oneof(anyMelody, anyNotes), anyChart, (any, chart) => {
        const line = within(any, chart);
        const barTicks = barTicksOf(chart);
        const bars = [...new Set(chart.spans.filter(({ chord }) => chord).map(({ bar }) => bar))];
        const marks = bars.map((bar) =>
          line.notes.some(
            ({ start, duration }) =>
              start < bar * barTicks && start + duration > (bar - 1) * barTicks,
          )
            ? 'x'
            : '.',
        );
        const silent = [...marks.join('').matchAll(/\.{3,}/gu)].reduce(
          (sum, [run]) => sum + run.length,
          0,
        );
        expect(scoreLine(line, chart).played).toBeCloseTo(1 - silent / bars.length, 12);
      }),
    );
  });

  it('played of scoreLine is 1 for a chorus with a note in every bar', () => {
    const chart = makeChart('basic', 'G');
    const notes = chart.spans.map(({ start }) => ({ start, duration: 1, pitch: 67 }));
    expect(scoreLine({ metre: '4/4', pickup: 0, notes }, chart).played).toBe(1);
  });
});

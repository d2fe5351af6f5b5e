import { makeChart } from '@reedplate/form';
import { type Line, makeLine, parseMetre } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { lines } from '../arbitraries.fixture.js';
import { foldRepeats } from './fold-repeats.js';
import { playOrder } from './play-order.js';
import { type WrittenBar, writeBars } from './write-bars.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

const note = (start: number, duration: number, pitch = 67) => ({ start, duration, pitch });

/** A part of a note at its tick. */
interface Sounding {
  readonly start: number;
  readonly end: number;
  readonly pitch: number;
  readonly tiedFrom: boolean;
}

function partsOf(bars: readonly WrittenBar[]): readonly Sounding[] {
  let at = 0;
  return bars.flatMap(({ voices, length }) => {
    const barStart = at;
    at += length;
    return voices.flat().flatMap(({ offset, duration, pitches, tiedFrom }) => {
      const start = barStart + offset;
      return pitches.map((pitch) => ({ start, end: start + duration, pitch, tiedFrom }));
    });
  });
}

/** Notes of bars, tied parts joined: start, duration, pitch. */
function soundOf(bars: readonly WrittenBar[]): readonly (readonly number[])[] {
  const notes: number[][] = [];
  const open = new Map<string, number[]>();
  for (const { start, end, pitch, tiedFrom } of partsOf(bars)) {
    const before = tiedFrom ? open.get(`${pitch} ${start}`) : undefined;
    const sounding = before ?? [start, 0, pitch];
    sounding[1] = end - (sounding[0] ?? 0);
    if (before === undefined) notes.push(sounding);
    open.set(`${pitch} ${end}`, sounding);
  }
  return notes.sort(byNumbers);
}

const byNumbers = (a: readonly number[], b: readonly number[]): number =>
  (a[0] ?? 0) - (b[0] ?? 0) || (a[2] ?? 0) - (b[2] ?? 0) || (a[1] ?? 0) - (b[1] ?? 0);
const notesOf = ({ notes }: Line): readonly (readonly number[])[] =>
  notes.map(({ start, duration, pitch }) => [start, duration, pitch]).sort(byNumbers);

describe('writeBars', () => {
  test('writeBars numbers bars from 1, a pickup 0, and fills them with rests', () => {
    const bars = writeBars(makeLine([note(0, 480)], { pickup: 960 }), undefined);
    expect(bars.map(({ number, length }) => [number, length])).toEqual([
      [0, 960],
      [1, 3840],
    ]);
    expect(bars[0]?.voices[0]?.map(({ pitches, duration }) => [pitches.length, duration])).toEqual([
      [1, 480],
      [0, 480],
    ]);
  });

  test('writeBars keeps notes and times, each bar filled by its first voice', () => {
    fc.assert(
      fc.property(lines({ unit: 60, chords: true }), (line) => {
        const bars = writeBars(line, undefined);
        expect(soundOf(bars)).toEqual(notesOf(line));
        for (const { voices, length } of bars) {
          for (const events of voices) {
            expect(events.reduce((sum, { duration }) => sum + duration, 0)).toBe(length);
          }
        }
        const { barTicks } = parseMetre(line.metre);
        expect(
          bars.slice(line.pickup === 0 ? 0 : 1).every(({ length }) => length === barTicks),
        ).toBe(true);
      }),
    );
  });

  test('writeBars puts notes that overlap in voices, and no two that overlap in one', () => {
    const notes = fc.array(
      fc.record({
        start: fc.nat({ max: 20 }).map((at) => at * 480),
        duration: fc.integer({ min: 1, max: 12 }).map((length) => length * 480),
        pitch: fc.integer({ min: 60, max: 72 }),
      }),
      { minLength: 1, maxLength: 12 },
    );
    fc.assert(
      fc.property(notes, (overlapping) => {
        const bars = writeBars(makeLine(overlapping), undefined);
        for (const events of bars.flatMap(({ voices }) => voices)) {
          let at = 0;
          for (const { offset, duration } of events) {
            expect(offset).toBe(at);
            at += duration;
          }
        }
        const sounding = bars
          .flatMap(({ voices }) => voices.flat())
          .reduce((sum, { duration, pitches }) => sum + duration * pitches.length, 0);
        expect(sounding).toBe(overlapping.reduce((sum, { duration }) => sum + duration, 0));
      }),
    );
  });

  test('writeBars puts a word under each beginning, once, in order', () => {
    const line = makeLine([note(0, 4800, 60), note(0, 4800, 64), note(4800, 480), note(5280, 960)]);
    const words = writeBars(line, undefined, ['a', 'b', 'c', 'd']).flatMap(({ voices }) =>
      voices.flat().flatMap(({ word, tiedFrom }) => (word === undefined ? [] : [[word, tiedFrom]])),
    );
    expect(words).toEqual([
      ['a', false],
      ['b', false],
      ['c', false],
    ]);
  });

  test('writeBars shows each change of chord in its bar, of the chart laid on bar 1', () => {
    const chart = makeChart('basic', 'G', { pickup: 480 });
    const bars = writeBars(makeLine([], { pickup: 960 }), chart);
    const shown = bars.flatMap(({ number, chords }) =>
      chords.map(({ offset, chord }) => `${number}+${offset} ${chord?.symbol}`),
    );
    expect(shown.slice(0, 4)).toEqual(['1+0 G7', '5+0 C7', '7+0 G7', '9+0 D7']);
    expect(bars.length).toBe(13);
  });

  test('writeBars refuses a line of more than 20,000 bars', () => {
    const notes = Array.from({ length: 2500 }, (_, at) => note(at * 8 * 3840, 1));
    const allowed = makeLine([...notes.slice(0, 2499), note(20_000 * 3840 - 1, 1)]);
    expect(writeBars(allowed, undefined).length).toBe(20_000);
    expect(() => writeBars(makeLine([...notes, note(20_000 * 3840, 1)]), undefined)).toThrowError(
      expect.objectContaining({ code: 'LINE_INVALID', value: 20_001 }),
    );
  });

  test('writeBars refuses a few notes in a thousand bars and more, unless a chart has them', () => {
    const last = (bar: number): Line => makeLine([note(0, 1), note(bar * 3840 - 1, 1)]);
    expect(writeBars(last(1016), undefined).length).toBe(1016);
    expect(() => writeBars(last(1017), undefined)).toThrowError(
      expect.objectContaining({
        code: 'LINE_INVALID',
        value: 1017,
        expected: 'a line of at most 20000 bars, or 1016 where there are so few notes',
      }),
    );
    const chart = makeChart('basic', 'G', { choruses: 100 });
    expect(writeBars(last(1017), chart).length).toBe(1200);
  });

  test('writeBars refuses notes that are held over more bar lines than they give a sense to', () => {
    const held = (bars: number): Line =>
      makeLine([note(0, bars * 3840), note(1, bars * 3840), note(2, bars * 3840)]);
    expect(writeBars(held(341), undefined).length).toBe(342);
    expect(() => writeBars(held(342), undefined)).toThrowError(
      expect.objectContaining({ code: 'LINE_INVALID', value: 1025 }),
    );
  });

  test('writeBars refuses more than 64 notes that overlap', () => {
    const overlapping = (count: number): Line =>
      makeLine(Array.from({ length: count }, (_, at) => note(at, 960)));
    expect(writeBars(overlapping(64), undefined)[0]?.voices.length).toBe(64);
    expect(() => writeBars(overlapping(65), undefined)).toThrowError(
      expect.objectContaining({ code: 'LINE_INVALID', value: 65 }),
    );
  });
});

describe('foldRepeats', () => {
  const chorusLines = fc
    .record({
      choruses: fc.integer({ min: 2, max: 4 }),
      notes: fc.array(fc.tuple(fc.nat({ max: 11 }), fc.nat({ max: 3 })), { maxLength: 6 }),
      odd: fc.boolean(),
    })
    .map(({ choruses, notes, odd }) => {
      const chart = makeChart('basic', 'G', { choruses });
      const one = notes.map(([bar, beat]) => note(bar * 3840 + beat * 960, 480));
      const all = Array.from({ length: choruses }, (_, at) =>
        one.map((each) => ({ ...each, start: each.start + at * 12 * 3840 })),
      ).flat();
      const extra = odd ? [note(3840 * 13 + 480, 480, 72)] : [];
      return { chart, choruses, line: makeLine([...all, ...extra]) };
    });

  test('foldRepeats writes once what playing the repeat gives back', () => {
    fc.assert(
      fc.property(chorusLines, ({ chart, choruses, line }) => {
        const bars = writeBars(line, chart);
        const folded = foldRepeats(bars, choruses);
        const measures = folded.map(({ opens, closes, length }) => ({
          ...{ notes: [], chords: [], length, opens, closes, where: {} },
        }));
        const played = playOrder(measures).map((at) => folded[at] as WrittenBar);
        expect(soundOf(played)).toEqual(soundOf(bars));
        expect([12, bars.length]).toContain(folded.length);
      }),
    );
  });

  test('foldRepeats keeps choruses apart where they differ, or where they do not divide', () => {
    const line = makeLine([note(0, 480)]);
    const bars = writeBars(line, makeChart('basic', 'G', { choruses: 2 }));
    expect(foldRepeats(bars, 2)).toBe(bars);
    expect(foldRepeats(bars, 1)).toBe(bars);
    expect(foldRepeats(bars, 5)).toBe(bars);
  });

  test('foldRepeats leaves the pickup before the repeat', () => {
    const chart = makeChart('basic', 'G', { choruses: 2 });
    const bars = writeBars(makeLine([], { pickup: 960 }), chart);
    const folded = foldRepeats(bars, 2);
    expect(folded.map(({ opens }) => opens).indexOf(true)).toBe(1);
    expect(folded.at(-1)?.closes).toBe(2);
  });
});

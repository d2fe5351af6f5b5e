import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { makeWarningList } from '../warning.js';
import { layMeasures } from './lay-measures.js';
import type { Measure, MeasureNote } from './measure.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

const BAR = 3840;
const note = (offset: number, duration: number, pitch: number, tied = false): MeasureNote => ({
  ...{ offset, duration, pitch, tied },
});
const measure = (
  notes: readonly MeasureNote[],
  length = BAR,
  more: Partial<Measure> = {},
): Measure => ({
  ...{ notes, chords: [], length, opens: false, closes: 0, where: { bar: 1 } },
  ...more,
});

function lay(measures: readonly Measure[], order: readonly number[] = [...measures.keys()]) {
  const warnings = makeWarningList();
  const laid = layMeasures(measures, order, { barTicks: BAR, warnings });
  return { ...laid, warned: warnings.all().map(({ code }) => code) };
}

describe('layMeasures', () => {
  test('layMeasures lays measures end to end in the order given', () => {
    const measures = [measure([note(0, 960, 60)]), measure([note(960, 960, 62)])];
    const { notes, end } = lay(measures, [0, 1, 0]);
    expect(notes.map(({ start, pitch }) => [start, pitch])).toEqual([
      [0, 60],
      [BAR + 960, 62],
      [2 * BAR, 60],
    ]);
    expect(end).toBe(3 * BAR);
  });

  test('layMeasures joins ties over bar lines to one note, and chains of them', () => {
    const measures = [
      measure([note(2880, 960, 60, true)]),
      measure([note(0, BAR, 60, true)]),
      measure([note(0, 480, 60)]),
    ];
    const { notes, warned } = lay(measures);
    expect(notes).toEqual([{ start: 2880, duration: 960 + BAR + 480, pitch: 60 }]);
    expect(warned).toEqual([]);
  });

  test('layMeasures ties each note of a chord to its own pitch', () => {
    const chord = [note(0, BAR, 60, true), note(0, BAR, 64)];
    const { notes } = lay([measure(chord), measure([note(0, 960, 60), note(0, 960, 64)])]);
    expect(notes).toEqual([
      { start: 0, duration: BAR + 960, pitch: 60 },
      { start: 0, duration: BAR, pitch: 64 },
      { start: BAR, duration: 960, pitch: 64 },
    ]);
  });

  test('layMeasures leaves open a tie to another pitch, to a rest, or to nothing', () => {
    for (const next of [[note(0, 960, 62)], [note(960, 960, 60)], []]) {
      const { notes, warned } = lay([measure([note(2880, 960, 60, true)]), measure(next)]);
      expect(notes.length).toBe(1 + next.length);
      expect(warned).toEqual(['tie-open']);
    }
  });

  test('layMeasures takes a short first measure for a pickup, unless it closes a repeat', () => {
    const short = measure([note(0, 960, 60)], 960);
    expect(lay([short, measure([])]).pickup).toBe(960);
    expect(lay([{ ...short, closes: 2 }, measure([])]).pickup).toBe(0);
    expect(lay([short]).pickup).toBe(0);
    expect(lay([measure([]), short]).pickup).toBe(0);
  });

  test('layMeasures lets a bar be split around a repeat, and warns of others that are too short', () => {
    const split = [measure([], 2880, { closes: 2 }), measure([], 960), measure([])];
    expect(lay(split).warned).toEqual([]);
    expect(lay([measure([]), measure([], 960), measure([])]).warned).toEqual(['bars-off-grid']);
    expect(lay([measure([]), measure([], 960)]).warned).toEqual([]);
    expect(lay([measure([]), measure([], 2 * BAR), measure([])]).warned).toEqual(['bars-off-grid']);
  });

  test('layMeasures leaves out a note that is shorter than a tick, with a warning', () => {
    expect(lay([measure([note(0, 0.2, 60)])])).toMatchObject({ notes: [], warned: ['note-empty'] });
  });

  test('layMeasures refuses repeats that play more than 500,000 notes', () => {
    const full = measure(Array.from({ length: 1000 }, () => note(0, 1, 60)));
    const order = Array.from({ length: 501 }, () => 0);
    expect(() => lay([full], order)).toThrowError(
      expect.objectContaining({ code: 'FILE_TOO_LARGE' }),
    );
  });

  test('layMeasures rounds times once, so that none of them drifts', () => {
    const sevenths = Array.from({ length: 7 }, (_, at) => note((at * BAR) / 7, BAR / 7, 60 + at));
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), (bars) => {
        const { notes, end } = lay(Array.from({ length: bars }, () => measure(sevenths)));
        expect(end).toBe(bars * BAR);
        for (const [at, { start, duration }] of notes.entries()) {
          expect(Math.abs(start - (at * BAR) / 7)).toBeLessThanOrEqual(0.5);
          expect(start + duration).toBe(notes[at + 1]?.start ?? end);
        }
      }),
    );
  });

  test('layMeasures keeps the time that sounds, whatever is tied', () => {
    const tied = fc.array(fc.tuple(fc.integer({ min: 1, max: 8 }), fc.boolean()), { minLength: 1 });
    fc.assert(
      fc.property(tied, (pieces) => {
        let offset = 0;
        const notes = pieces.map(([length, tie]) => {
          const piece = note(offset, length * 120, 60, tie);
          offset += length * 120;
          return piece;
        });
        const laid = lay([measure(notes, offset)]).notes;
        expect(laid.reduce((sum, { duration }) => sum + duration, 0)).toBe(offset);
        expect(laid.length).toBe(1 + pieces.slice(0, -1).filter(([, tie]) => !tie).length);
      }),
    );
  });
});

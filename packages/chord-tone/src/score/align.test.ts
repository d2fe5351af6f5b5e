import { makeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type AlignOptions, alignLine, requireCountIn, undoSwing } from './align.js';
import type { TakeAlignment } from './score-types.js';
import { hearNotes } from './sounded.js';

const BEAT = 960;

function swung(ratio: number, beats = 8): ReturnType<typeof makeLine> {
  const offBeat = Math.round((BEAT * ratio) / (ratio + 1));
  return makeLine(
    Array.from({ length: beats * 2 }, (_, index) => ({
      start: Math.floor(index / 2) * BEAT + (index % 2) * offBeat,
      duration: 200,
      pitch: 67,
    })),
  );
}

function align(
  line: ReturnType<typeof makeLine>,
  options: AlignOptions = {},
): Pick<TakeAlignment, 'latency' | 'swing'> {
  return alignLine(hearNotes(line, 0), { pickup: 0, beatTicks: BEAT }, options);
}

describe('undoSwing', () => {
  it.each([
    [0, 0],
    [1 / 3, 1 / 4],
    [2 / 3, 1 / 2],
    [5 / 6, 3 / 4],
    [3 + 5 / 6, 3 + 3 / 4],
  ])('undoSwing takes beat %d, played at two to one, back to %d', (played, written) => {
    expect(undoSwing(played, 2)).toBeCloseTo(written, 12);
  });
});

describe('alignLine', () => {
  it.each([1.3, 1.5, 2, 2.5])('alignLine finds a swing of %s', (ratio) => {
    expect(align(swung(ratio)).swing).toBeCloseTo(ratio, 1);
  });

  it('alignLine leaves even eighths even, and lines with few off-beats as they are', () => {
    expect(align(swung(1)).swing).toBe(1);
    expect(align(swung(2, 3)).swing).toBe(1);
  });

  it('alignLine finds how late a line is as a whole', () => {
    const late = makeLine(swung(1).notes.map((note) => ({ ...note, start: note.start + 70 })));
    expect(align(late, { latency: 'estimate' }).latency).toBe(70);
    expect(align(late).latency).toBe(0);
  });

  it('alignLine hears a note in tied parts as one onset', () => {
    const [first, ...rest] = swung(2, 3).notes;
    const parts = [
      { start: 0, duration: 460, pitch: 67 },
      { start: 460, duration: 40, pitch: 67 },
    ];
    expect(first).toMatchObject({ start: 0 });
    expect(align(makeLine([...parts, ...rest])).swing).toBe(1);
  });

  it('alignLine takes off milliseconds at the tempo that is known', () => {
    // Half a second is a beat at 120.
    const told = (latency: `${number}ms`) =>
      alignLine(hearNotes(swung(1), 0), { pickup: 0, beatTicks: BEAT }, { latency }, 120).latency;
    expect([told('500ms'), told('-80ms'), told('12.5ms')]).toEqual([960, -154, 24]);
  });

  it.each([[-1], [65], [0.5], ['1'], [null]])('requireCountIn refuses %j', (bars) => {
    expect(() => requireCountIn(bars)).toThrow(expect.objectContaining({ code: 'NUMBER_RANGE' }));
  });

  it('alignLine takes what it is told', () => {
    expect(align(swung(2), { swing: 3, latency: -20 })).toEqual({ swing: 3, latency: -20 });
  });
});

describe('undoSwing', () => {
  it('undoSwing lays the off-beat as played on the half beat', () => {
    expect(undoSwing(2 + 2 / 3, 2)).toBeCloseTo(2.5, 12);
    expect(undoSwing(0.75, 3)).toBeCloseTo(0.5, 12);
    expect(undoSwing(-1 / 3, 2)).toBeCloseTo(-0.5, 12);
  });

  it('undoSwing keeps beats where they are and order as it is', () => {
    const beats = fc.double({ min: -8, max: 64, noNaN: true });
    fc.assert(
      fc.property(beats, beats, fc.double({ min: 1, max: 4, noNaN: true }), (one, other, swing) => {
        expect(undoSwing(Math.floor(one), swing)).toBeCloseTo(Math.floor(one), 12);
        const [low, high] = one < other ? [one, other] : [other, one];
        expect(undoSwing(low, swing)).toBeLessThanOrEqual(undoSwing(high, swing) + 1e-9);
      }),
    );
  });
});

describe('alignLine by sorting', () => {
  /** Onsets by pitch, so that none can tie with another. */
  const onsets = fc.array(fc.integer({ min: 0, max: 60_000 }), { minLength: 1, maxLength: 40 });
  const lineAt = (starts: readonly number[]): ReturnType<typeof makeLine> =>
    makeLine(starts.map((start, at) => ({ start, duration: 1, pitch: 20 + at })));

  function median(values: readonly number[]): number {
    const sorted = [...values].sort((a, b) => a - b);
    const [low, high] = [(sorted.length - 1) >> 1, sorted.length >> 1];
    return ((sorted[low] ?? 0) + (sorted[high] ?? 0)) / 2;
  }

  it('alignLine takes the middle one of how late onsets are against the nearest half beat', () => {
    fc.assert(
      fc.property(onsets, (starts) => {
        const late = starts.map((start) => start - Math.round(start / 480) * 480);
        const expected = late.length < 4 ? 0 : Math.round(median(late));
        // As numbers: the middle may be a negative zero here.
        expect(align(lineAt(starts), { latency: 'estimate' }).latency + 0).toBe(expected + 0);
      }),
    );
  });

  it('alignLine takes the middle one of the onsets between 0.45 and 0.72 of a beat for the off-beat', () => {
    fc.assert(
      fc.property(onsets, fc.integer({ min: -500, max: 500 }), (starts, latency) => {
        const within = starts
          .map((start) => ((((start - latency) % BEAT) + BEAT) % BEAT) / BEAT)
          .filter((part) => part > 0.45 && part < 0.72);
        const middle = median(within);
        const ratio = Math.round((middle / (1 - middle)) * 100) / 100;
        const isSwung = within.length >= 4 && middle / (1 - middle) >= 1.15;
        const { swing } = align(lineAt(starts), { latency });
        expect(swing).toBeCloseTo(isSwung ? ratio : 1, 6);
        expect(swing).toBeGreaterThanOrEqual(1);
        expect(swing).toBeLessThanOrEqual(2.58);
      }),
    );
  });

  it('alignLine hears the same swing wherever the line stands, bars later or with a pickup', () => {
    fc.assert(
      fc.property(onsets, fc.integer({ min: 0, max: 64 }), (starts, beats) => {
        const moved = lineAt(starts.map((start) => start + beats * BEAT));
        for (const latency of ['estimate', 0] as const) {
          const there = alignLine(
            hearNotes(moved, 0),
            { pickup: beats * BEAT, beatTicks: BEAT },
            { latency },
          );
          expect(there).toEqual(align(lineAt(starts), { latency }));
          expect(align(moved, { latency })).toEqual(there);
        }
      }),
    );
  });

  it.each([
    ['a swing below even', { swing: 0.99 }],
    ['a swing above 4', { swing: 4.01 }],
    ['a swing that is no number', { swing: Number.NaN }],
    ['a word', { swing: 'auto' as 'estimate' }],
    ['a part of a tick', { latency: 0.5 }],
    ['a latency without end', { latency: Number.POSITIVE_INFINITY }],
    ['another word', { latency: 'late' as 'estimate' }],
    ['milliseconds where no tempo is known', { latency: '80ms' as const }],
  ])('alignLine refuses %s', (_, options) => {
    expect(() => align(swung(2), options)).toThrow(
      expect.objectContaining({ code: 'NUMBER_RANGE' }),
    );
  });
});

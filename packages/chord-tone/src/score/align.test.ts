import { makeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type AlignOptions, alignLine, undoSwing } from './align.js';
import { joinTies } from './runs.js';
import type { Alignment } from './score-types.js';

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

function align(line: ReturnType<typeof makeLine>, options: AlignOptions = {}): Alignment {
  return alignLine(joinTies(line, 0), { pickup: 0, beatTicks: BEAT }, options);
}

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

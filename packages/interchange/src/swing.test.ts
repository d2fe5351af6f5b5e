import { makeLine } from '@reedplate/line';
import { describe, expect, test } from 'vitest';
import { applySwing, isSwung, removeSwing } from './swing.js';

const eighths = makeLine(
  Array.from({ length: 8 }, (_, at) => ({ start: at * 480, duration: 480, pitch: 60 + at })),
);
const starts = (line: typeof eighths): readonly number[] => line.notes.map(({ start }) => start);

describe('applySwing and removeSwing', () => {
  test('applySwing and removeSwing read slow, whose beats are of three already, and refuse what is no feel', () => {
    for (const change of [applySwing, removeSwing]) {
      expect(change(makeLine(eighths.notes, { metre: '12/8' }), { feel: 'slow' }).notes).toEqual(
        eighths.notes,
      );
      expect(() => change(eighths, { feel: 'swung' as 'shuffle' })).toThrowError(/a feel/u);
    }
  });

  test('applySwing makes the first eighth of a beat twice as long as the second', () => {
    expect(applySwing(eighths).notes.map(({ duration }) => duration)).toEqual([
      ...[640, 320, 640, 320, 640, 320, 640, 320],
    ]);
  });

  // Friberg and Sundström (2002): from 3.5 to 1 when slow, to 1 to 1 when fast.
  test.each([
    [1, 480],
    [1.5, 576],
    [2, 640],
    [3, 720],
    [3.5, 747],
  ])('applySwing with a ratio of %d plays the second eighth at %i', (ratio, second) => {
    expect(applySwing(eighths, { ratio }).notes[1]?.start).toBe(second);
  });

  test('applySwing leaves straight feels and compound metres as they are', () => {
    expect(applySwing(eighths, { feel: 'straight' })).toBe(eighths);
    const compound = makeLine(eighths.notes, { metre: '12/8' });
    expect(applySwing(compound)).toBe(compound);
    expect(removeSwing(compound)).toBe(compound);
    expect(isSwung('2/2', 'shuffle')).toBe(false);
    expect(isSwung('3/4', 'shuffle')).toBe(true);
  });

  test('applySwing counts beats from bar 1, through a pickup that is no whole beat', () => {
    const line = makeLine(eighths.notes, { pickup: 480 });
    expect(starts(applySwing(line)).slice(0, 4)).toEqual([160, 480, 1120, 1440]);
    expect(starts(removeSwing(applySwing(line)))).toEqual(starts(line));
  });

  test.each([0, -1, 4.01, Number.NaN, Number.POSITIVE_INFINITY])(
    'applySwing refuses a ratio of %d',
    (ratio) => {
      for (const change of [applySwing, removeSwing]) {
        expect(() => change(eighths, { ratio })).toThrowError(
          expect.objectContaining({ code: 'NUMBER_RANGE' }),
        );
      }
    },
  );
});

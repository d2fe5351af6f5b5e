import { makeLine } from '@reedplate/line';
import { describe, expect, test } from 'vitest';
import { isSwung, layFeel, liftFeel } from './feel.js';

const eighths = makeLine(
  Array.from({ length: 8 }, (_, at) => ({ start: at * 480, duration: 480, pitch: 60 + at })),
);
const starts = (line: typeof eighths): readonly number[] => line.notes.map(({ start }) => start);

describe('layFeel and liftFeel', () => {
  test('layFeel makes the first eighth of a beat twice as long as the second', () => {
    expect(layFeel(eighths).notes.map(({ duration }) => duration)).toEqual([
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
  ])('layFeel with a ratio of %d plays the second eighth at %i', (ratio, second) => {
    expect(layFeel(eighths, { ratio }).notes[1]?.start).toBe(second);
  });

  test('layFeel leaves straight feels and compound metres as they are', () => {
    expect(layFeel(eighths, { feel: 'straight' })).toBe(eighths);
    const compound = makeLine(eighths.notes, { metre: '12/8' });
    expect(layFeel(compound)).toBe(compound);
    expect(liftFeel(compound)).toBe(compound);
    expect(isSwung('2/2', 'shuffle')).toBe(false);
    expect(isSwung('3/4', 'shuffle')).toBe(true);
  });

  test('layFeel counts beats from bar 1, through a pickup that is no whole beat', () => {
    const line = makeLine(eighths.notes, { pickup: 480 });
    expect(starts(layFeel(line)).slice(0, 4)).toEqual([160, 480, 1120, 1440]);
    expect(starts(liftFeel(layFeel(line)))).toEqual(starts(line));
  });

  test.each([0, -1, 4.01, Number.NaN, Number.POSITIVE_INFINITY])(
    'layFeel refuses a ratio of %d',
    (ratio) => {
      for (const change of [layFeel, liftFeel]) {
        expect(() => change(eighths, { ratio })).toThrowError(
          expect.objectContaining({ code: 'NUMBER_RANGE' }),
        );
      }
    },
  );
});

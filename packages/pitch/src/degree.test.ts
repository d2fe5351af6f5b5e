import { describe, expect, test } from 'vitest';
import { degreeAbove, readDegree, SCALE_DEGREES } from './degree.js';
import { PITCH_CLASSES, type PitchClass } from './pitch-class.js';

describe('degreeAbove', () => {
  test('names the twelve semitones above any tonic', () => {
    for (const tonic of PITCH_CLASSES) {
      const above = SCALE_DEGREES.map((_, i) =>
        degreeAbove(((tonic + i) % 12) as PitchClass, tonic),
      );
      expect(above).toEqual(SCALE_DEGREES);
    }
  });

  test('refuses what is no pitch class', () => {
    expect(() => degreeAbove(undefined as unknown as PitchClass, 0)).toThrow(
      expect.objectContaining({ code: 'NUMBER_RANGE' }),
    );
  });
});

describe('readDegree', () => {
  test.each([
    ['1', 0, 0],
    ['b3', 3, 2],
    ['3', 4, 2],
    ['#4', 6, 3],
    ['b5', 6, 4],
    ['bb7', 9, 6],
    ['7', 11, 6],
    ['b9', 13, 8],
    ['#9', 15, 8],
    ['b10', 15, 9],
    ['11', 17, 10],
    ['13', 21, 12],
  ])('places %s %i semitones and %i steps up', (degree, semitones, steps) => {
    expect(readDegree(degree)).toEqual({ semitones, steps });
  });
});

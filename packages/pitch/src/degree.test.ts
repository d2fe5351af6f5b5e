import { describe, expect, test } from 'vitest';
import { degreeAbove, SCALE_DEGREES } from './degree.js';
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

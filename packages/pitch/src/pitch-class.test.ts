import { describe, expect, test } from 'vitest';
import { PITCH_CLASSES, toPitchClass } from './pitch-class.js';

describe('toPitchClass', () => {
  test.each([
    [0, 0],
    [60, 0],
    [67, 7],
    [-1, 11],
    [-12, 0],
    [-0, 0],
  ])('takes %i to %i', (semitones, pitchClass) => {
    expect(toPitchClass(semitones)).toBe(pitchClass);
  });

  test.each([[0.5], [Number.NaN], [Number.POSITIVE_INFINITY], ['7']])('refuses %s', (value) => {
    expect(() => toPitchClass(value as number)).toThrow(
      expect.objectContaining({ code: 'NUMBER_RANGE', value }),
    );
  });

  test('gives every class of PITCH_CLASSES back', () => {
    expect(PITCH_CLASSES.map(toPitchClass)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
    expect(Object.isFrozen(PITCH_CLASSES)).toBe(true);
  });
});

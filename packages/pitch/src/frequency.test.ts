import { describe, expect, test } from 'vitest';
import { centsBetween, frequency } from './frequency.js';

const range = expect.objectContaining({ code: 'NUMBER_RANGE' });

describe('frequency', () => {
  test('doubles in twelve semitones and follows A4', () => {
    expect(frequency(69)).toBe(440);
    expect(frequency(81)).toBe(880);
    expect(frequency(69, { a4: 443 })).toBe(443);
    expect(frequency(69.5)).toBeCloseTo(440 * 2 ** (1 / 24), 10);
  });

  test.each([[Number.NaN], [Number.POSITIVE_INFINITY], ['69'], [undefined]])(
    'refuses the pitch %s',
    (pitch) => {
      expect(() => frequency(pitch as number)).toThrow(range);
    },
  );

  test.each([[0], [-440], [Number.NaN], ['440']])('refuses A4 at %s', (a4) => {
    expect(() => frequency(69, { a4: a4 as number })).toThrow(range);
  });
});

describe('centsBetween', () => {
  test('measures up and down', () => {
    expect(centsBetween(220, 440)).toBe(1200);
    expect(centsBetween(440, 220)).toBe(-1200);
    expect(centsBetween(440, 440)).toBe(0);
  });

  test.each([
    [0, 440],
    [440, 0],
    [-1, 440],
    [440, Number.NaN],
  ])('refuses %s to %s', (from, to) => {
    expect(() => centsBetween(from, to)).toThrow(range);
  });
});

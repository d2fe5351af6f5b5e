import { describe, expect, test } from 'vitest';
import { centsAt } from './cents-at.js';

const bend = {
  curve: [
    { at: 100, cents: -50 },
    { at: 200, cents: -150 },
    { at: 400, cents: 0 },
  ],
};

describe('centsAt', () => {
  test.each([
    [0, -50],
    [100, -50],
    [150, -100],
    [200, -150],
    [300, -75],
    [400, 0],
    [9000, 0],
  ])('is at tick %i %i cents, straight between points and level outside', (at, cents) => {
    expect(centsAt(bend, at)).toBe(cents);
  });

  test('is the deviation of the whole note where there is no curve, and 0 where there is neither', () => {
    expect(centsAt({ cents: 7 }, 50)).toBe(7);
    expect(centsAt({}, 50)).toBe(0);
  });

  test.each([[Number.NaN], [Number.POSITIVE_INFINITY], ['3'], [undefined]])(
    'refuses the moment %s',
    (at) => {
      expect(() => centsAt(bend, at as number)).toThrow(
        expect.objectContaining({ code: 'LINE_INVALID' }),
      );
    },
  );

  test('goes by the curve where there are both', () => {
    expect(centsAt({ ...bend, cents: 7 }, 100)).toBe(-50);
  });
});

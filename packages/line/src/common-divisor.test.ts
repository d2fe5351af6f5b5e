import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { commonDivisor } from './common-divisor.js';

describe('commonDivisor', () => {
  test('commonDivisor divides both, and what is left has no common divisor but 1', () => {
    const whole = fc.integer({ min: 1, max: 1_000_000 });
    fc.assert(
      fc.property(whole, whole, (a, b) => {
        const divisor = commonDivisor(a, b);
        expect([a % divisor, b % divisor]).toEqual([0, 0]);
        expect(commonDivisor(a / divisor, b / divisor)).toBe(1);
      }),
    );
  });
});

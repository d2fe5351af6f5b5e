import { describe, expect, test } from 'vitest';
import { randomFrom } from './random.js';

describe('randomFrom', () => {
  test('randomFrom gives the same numbers from the same seed, from 0 to below 1', () => {
    const [one, two] = [randomFrom(7), randomFrom(7)];
    for (let at = 0; at < 1000; at += 1) {
      const number = one();
      expect(two()).toBe(number);
      expect(number).toBeGreaterThanOrEqual(0);
      expect(number).toBeLessThan(1);
    }
    expect(randomFrom(8)()).not.toBe(randomFrom(7)());
  });

  // The generator mulberry32 (T. Ettinger, 2017): values from memory.
  test.each([
    [1, 0.6270739405881613],
    [42, 0.6011037519201636],
  ])('randomFrom(%d) begins with %d', (seed, first) => {
    expect(randomFrom(seed)()).toBe(first);
  });

  test('randomFrom falls evenly: ten classes of 100,000 numbers, chi-square under its bound of 0.1 %', () => {
    const random = randomFrom(2026);
    const counts = new Array<number>(10).fill(0);
    for (let at = 0; at < 100_000; at += 1) {
      const drawer = Math.floor(random() * 10);
      counts[drawer] = (counts[drawer] ?? 0) + 1;
    }
    const chiSquare = counts.reduce((sum, count) => sum + (count - 10_000) ** 2 / 10_000, 0);
    // The 99.9th percentile at 9 degrees of freedom. NIST/SEMATECH e-Handbook of Statistical Methods,
    // section 1.3.6.7.4, Critical values of the chi-square distribution.
    expect(chiSquare).toBeLessThan(27.877);
  });
});

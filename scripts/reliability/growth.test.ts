import { describe, expect, test, vi } from 'vitest';
import { growthOf } from './growth.js';
import { textPattern } from './pattern.js';
import { READERS } from './readers.js';

vi.setConfig({ testTimeout: 300_000 });

/** Short enough for every run of the tests; `npm run growth` goes to 1 MB. */
const SIZES = { small: 8192, large: 65_536, runs: 3, fast: 60 } as const;
const STEEPEST = 1.2;

describe.each(READERS)('$name', (reader) => {
  test('takes time that grows as its input does, on every pattern', () => {
    for (const pattern of reader.patterns) {
      // Another program may take the caches away once, and not three times.
      const exponents: number[] = [];
      do exponents.push(growthOf(reader, pattern, SIZES).exponent);
      while ((exponents.at(-1) ?? 0) > STEEPEST && exponents.length < 3);
      expect(exponents.at(-1), pattern.name).toBeLessThanOrEqual(STEEPEST);
    }
  });
});

describe('growthOf', () => {
  test('growthOf tells quadratic from linear time', () => {
    const pattern = textPattern('x', 'x');
    let sum = 0;
    const spin = (steps: number): void => {
      for (let at = 0; at < steps; at += 1) sum += Math.sqrt(at);
    };
    const quadratic = { read: (input: string | Uint8Array) => spin(input.length ** 2 / 10) };
    const linear = { read: (input: string | Uint8Array) => spin(input.length * 10_000) };
    expect(growthOf(quadratic, pattern, SIZES).exponent).toBeGreaterThan(1.6);
    expect(sum).toBeGreaterThan(0);
    expect(growthOf(linear, pattern, SIZES).exponent).toBeLessThan(1.4);
  });
});

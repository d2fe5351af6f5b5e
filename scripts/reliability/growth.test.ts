import { describe, expect, test, vi } from 'vitest';
import { growthOf } from './growth.js';
import { textPattern } from './pattern.js';
import { READERS } from './readers.js';

vi.setConfig({ testTimeout: 120_000 });

const SIZES = { small: 8192, large: 65_536, runs: 3, fast: 60 } as const;
const STEEPEST = 1.2;

/** Patterns that once took time by the square of their size; `npm run growth` tries them all. */
const ONCE_QUADRATIC = [
  ['readAbc', 'chord symbols and bar lines'],
  ['readAbc', 'tempos between chord symbols'],
  ['readAbc', 'ties after decorations'],
  ['readAbc', 'fields of the file, and tunes'],
  ['readMusicXml', 'a staff a bar'],
  ['parseTimedTab', 'words all unlike'],
] as const;

describe('readers', () => {
  test.each(ONCE_QUADRATIC)('%s takes time that grows as its input does: %s', (name, pattern) => {
    const reader = READERS.find((each) => each.name === name);
    const found = reader?.patterns.find((each) => each.name === pattern);
    if (reader === undefined || found === undefined) throw new Error('no such pattern');
    // Another program may take the caches away once, and not three times.
    const exponents: number[] = [];
    do exponents.push(growthOf(reader, found, SIZES).exponent);
    while ((exponents.at(-1) ?? 0) > STEEPEST && exponents.length < 3);
    expect(exponents.at(-1)).toBeLessThanOrEqual(STEEPEST);
  });
});

describe('growthOf', () => {
  test('growthOf tells quadratic from linear time', () => {
    let sum = 0;
    const spin = (steps: number): void => {
      for (let at = 0; at < steps; at += 1) sum += Math.sqrt(at);
    };
    const pattern = textPattern('x', 'x');
    const quadratic = { read: (input: string | Uint8Array) => spin(input.length ** 2 / 60) };
    const linear = { read: (input: string | Uint8Array) => spin(input.length * 1000) };
    expect(growthOf(quadratic, pattern, SIZES).exponent).toBeGreaterThan(1.6);
    expect(growthOf(linear, pattern, SIZES).exponent).toBeLessThan(1.4);
    expect(sum).toBeGreaterThan(0);
  });
});

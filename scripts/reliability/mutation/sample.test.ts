import { describe, expect, test } from 'vitest';
import { draw, interval, mutantsOf, testsOf } from './sample.js';

describe('draw', () => {
  const all = mutantsOf('tab');

  test('draw gives the same for the same seed, each once, all where more are wanted', () => {
    const drawn = draw(all, { sample: 40, seed: 7 });
    expect(drawn).toEqual(draw(all, { sample: 40, seed: 7 }));
    expect(drawn).not.toEqual(draw(all, { sample: 40, seed: 8 }));
    expect(new Set(drawn).size).toBe(40);
    expect(new Set(draw(all, { sample: 1e6, seed: 1 }))).toEqual(new Set(all));
  });

  test('mutantsOf leaves tests, indexes and rows of data out; testsOf finds tests in both folders', () => {
    const files = new Set(mutantsOf('layout').map(({ file }) => file));
    expect([...files].filter((file) => /\.test\.ts|\/index\.ts|-rows/u.test(file))).toEqual([]);
    expect(testsOf('chord-tone').some((file) => file.startsWith('packages/chord-tone/test/'))).toBe(
      true,
    );
  });
});

describe('interval', () => {
  // R. G. Newcombe, "Two-sided confidence intervals for the single proportion", Statistics in Medicine 17
  // (1998), table I, method 3. Values from memory.
  test.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('interval of %d in %d is %d to %d', (hits, tried, low, high) => {
    expect(interval(hits, tried)[0]).toBeCloseTo(low, 4);
    expect(interval(hits, tried)[1]).toBeCloseTo(high, 4);
  });
});

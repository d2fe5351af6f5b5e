import { expect, test } from 'vitest';
import { published } from '../../../../test/sources/published.js';
import { wilsonInterval } from './wilson.js';

// Newcombe (1998), Statistics in Medicine 17, 857-872, table of worked examples, method 3; from memory.
published('memory', "Wilson's interval of four shares", () => {
  test.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('wilsonInterval of %i in %i is %d to %d', (found, count, low, high) => {
    const [from, to] = wilsonInterval(found, count);
    expect(from).toBeCloseTo(low, 4);
    expect(to).toBeCloseTo(high, 4);
  });
});

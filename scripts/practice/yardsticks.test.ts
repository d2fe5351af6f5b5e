import { describe, expect, it } from 'vitest';
import { distance, intervalsOf, melodyOf, repeatedPatterns, sharesOf } from './yardsticks.js';

describe('yardsticks', () => {
  it('distance is 0 between the same shares, 1 where nothing is shared, and half for half', () => {
    expect(distance(sharesOf(['a', 'b']), sharesOf(['b', 'a']))).toBe(0);
    expect(distance(sharesOf(['a']), sharesOf(['b']))).toBe(1);
    expect(distance(sharesOf(['a', 'b']), sharesOf(['a', 'a']))).toBe(0.5);
  });

  it('intervalsOf counts semitones, melodyOf takes the highest of a chord', () => {
    expect(intervalsOf([60, 64, 62])).toEqual(['4', '-2']);
    const notes = [60, 64].map((pitch) => ({ start: 0, duration: 1, pitch }));
    expect(melodyOf({ notes })).toEqual([64]);
  });

  it('repeatedPatterns is 1 for a line that goes round, 0 where nothing comes again', () => {
    expect(repeatedPatterns([0, 1, 2, 3, 4, 5, 6, 7, 8])).toBe(1);
    expect(repeatedPatterns([0, 1, 3, 6, 10, 15, 21])).toBe(0);
  });
});

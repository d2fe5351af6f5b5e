import { makeHarp, soundings } from '@reedplate/layout';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distanceBetween } from './distance.js';

const anySounding = fc.constantFrom(...soundings(makeHarp('C')));

describe('distanceBetween', () => {
  it('distanceBetween is turned round when the two are', () => {
    fc.assert(
      fc.property(anySounding, anySounding, (one, other) => {
        const there = distanceBetween(one, other);
        const back = distanceBetween(other, one);
        expect(back.semitones + there.semitones).toBe(0);
        expect(back.holes + there.holes).toBe(0);
        expect(back.breathChange).toBe(there.breathChange);
      }),
    );
  });

  it('distanceBetween a sounding and itself is nothing', () => {
    fc.assert(
      fc.property(anySounding, (one) => {
        expect(distanceBetween(one, one)).toEqual({ semitones: 0, holes: 0, breathChange: false });
      }),
    );
  });

  it('distanceBetween adds up over a third sounding', () => {
    fc.assert(
      fc.property(anySounding, anySounding, anySounding, (one, two, three) => {
        const whole = distanceBetween(one, three);
        const parts = [distanceBetween(one, two), distanceBetween(two, three)];
        expect(whole.semitones).toBe(parts.reduce((sum, { semitones }) => sum + semitones, 0));
        expect(whole.holes).toBe(parts.reduce((sum, { holes }) => sum + holes, 0));
      }),
    );
  });
});

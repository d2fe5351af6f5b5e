import { describe, expect, it } from 'vitest';
import { holeReeds, holeSoundings } from './hole-pool.js';
import { breathSoundings } from './hole-soundings.js';
import { TECHNIQUE_LEVELS } from './sounding.js';

describe('holeReeds', () => {
  it('is one frozen object for one hole', () => {
    expect(holeReeds(3, 67, 71)).toBe(holeReeds(3, 67, 71));
    expect(holeReeds(3, 67, 71)).not.toBe(holeReeds(4, 67, 71));
    expect(Object.isFrozen(holeReeds(3, 67, 71))).toBe(true);
  });

  it('keeps apart holes whose numbers would coincide', () => {
    // 60 * 128 + 190 is 61 * 128 + 62: what is no reed must not be taken for one.
    expect(holeReeds(1, 61, 62)).toEqual({ hole: 1, blow: 61, draw: 62 });
    expect(holeReeds(1, 60, 190)).toEqual({ hole: 1, blow: 60, draw: 190 });
    expect(holeReeds(1, 61, 62)).toEqual({ hole: 1, blow: 61, draw: 62 });
  });
});

describe('holeSoundings', () => {
  it('gives what breathSoundings works out, at every level, with and without a valve', () => {
    const reeds = holeReeds(2, 64, 67);
    for (const level of TECHNIQUE_LEVELS) {
      for (const valved of [false, true]) {
        const { blow, draw, alone } = holeSoundings(reeds, level, valved);
        expect(blow).toEqual(breathSoundings(reeds, 'blow', { level, valved }));
        expect(draw).toEqual(breathSoundings(reeds, 'draw', { level, valved }));
        expect(alone.flat()).toEqual([...blow, ...draw]);
      }
    }
  });

  it('works a hole out once', () => {
    const twice = [1, 2].map(() => holeSoundings(holeReeds(2, 64, 67), 'bends', false));
    expect(twice[0]).toBe(twice[1]);
  });
});

import { makeHarp } from '@reedplate/layout';
import { TWELVE_KEYS } from '@reedplate/pitch';
import { describe, expect, it } from 'vitest';
import type { Fault } from './faults.js';
import { otherHarpOf } from './other-harp.js';

const lies = (by: number): Fault => ({ code: 'TAKE_OTHER_HARP', by, explains: 1 });

describe('otherHarpOf', () => {
  it('otherHarpOf names the cross harps of both keys where no harp is at hand', () => {
    expect(otherHarpOf(lies(2), { key: 'G' }, {})).toEqual({
      fits: 'A',
      key: 'G',
      held: 'D',
      take: 'C',
    });
    // Cross harp in a minor key is the harp of the same tonic's cross harp.
    expect(otherHarpOf(lies(-2), { key: 'Am' }, {})).toMatchObject({ fits: 'Gm', take: 'D' });
  });

  it('otherHarpOf keeps a harp that suits the song, and changes one that does not', () => {
    const ofG = (key: 'C' | 'D') => otherHarpOf(lies(2), { key: 'G' }, { harp: makeHarp(key) });
    expect(ofG('C')).toMatchObject({ held: 'D', take: 'C' });
    expect(ofG('D')).toMatchObject({ held: 'D', take: 'C' });
  });

  it('otherHarpOf counts a position from the harp to the song', () => {
    // An F harp plays C in second position; a C harp plays F in twelfth.
    const held = (key: 'C' | 'F', harp: 'C' | 'F') =>
      otherHarpOf(lies(2), { key }, { harp: makeHarp(harp) });
    expect(held('C', 'F')).toMatchObject({ held: 'G', take: 'F' });
    expect(held('F', 'C')).toMatchObject({ held: 'C', take: 'Bb' });
  });

  it('otherHarpOf changes the harp that tab is written for', () => {
    const harp = makeHarp('C');
    expect(otherHarpOf(lies(2), { key: 'G' }, { harp, playedOnHarp: true })).toMatchObject({
      held: 'C',
      take: 'Bb',
    });
  });

  it('otherHarpOf moves both harps by the same interval, in all keys', () => {
    for (const { tonic, pitchClass } of TWELVE_KEYS) {
      for (const by of [-5, -2, 1, 6]) {
        const found = otherHarpOf(lies(by), { key: tonic }, {});
        const at = (name: string | undefined) =>
          TWELVE_KEYS.find((key) => makeHarp(key.tonic).key === name)?.pitchClass ?? Number.NaN;
        expect(at(found?.take)).toBe((pitchClass + 5) % 12);
        expect((((at(found?.held) - at(found?.take) - by) % 12) + 12) % 12).toBe(0);
      }
    }
  });

  it('otherHarpOf says nothing of other faults', () => {
    expect(otherHarpOf(null, { key: 'G' }, {})).toBeNull();
    const late: Fault = { code: 'TAKE_BARS_LATE', by: 1, explains: 1 };
    expect(otherHarpOf(late, { key: 'G' }, {})).toBeNull();
  });
});

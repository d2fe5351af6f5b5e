import { makeHarp } from '@reedplate/layout';
import { TWELVE_KEYS, transposeKey } from '@reedplate/pitch';
import { describe, expect, it } from 'vitest';
import { pickHarps } from './index.js';

describe('pickHarps', () => {
  it('puts cross harp first for a dominant blues in every key', () => {
    for (const key of TWELVE_KEYS) {
      const [best] = pickHarps(key);
      expect(best?.position).toBe(2);
      expect(best?.harp.key).toBe(transposeKey(key, -7).name);
    }
  });

  it('says which chords of a blues in G the C harp has whole', () => {
    const [best] = pickHarps('G');
    expect(best?.chords.map(({ symbol, whole }) => [symbol, whole])).toEqual([
      ['G7', { breath: 'draw', from: 1, to: 5 }],
      ['C7', { breath: 'blow', from: 1, to: 10 }],
      ['D7', null],
    ]);
  });

  it('chooses among the harps owned', () => {
    const own = ['D', 'A'].map((key) => makeHarp(key));
    expect(pickHarps('G', { own }).map(({ harp }) => harp.key)).toHaveLength(2);
  });
});

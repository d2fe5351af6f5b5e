import { makeHarp, transposeHarp } from '@reedplate/layout';
import { describe, expect, it } from 'vitest';
import { describeKeyChords } from './describe-key-chords.js';
import { keyChords } from './key-chords.js';

const wholeOf = (key: string, harp: string) =>
  keyChords(key as 'G', harp)
    .chords.filter(({ whole }) => whole.length > 0)
    .map(({ numeral }) => numeral);

describe('keyChords', () => {
  it('keyChords names the seven chords of major and of natural minor', () => {
    const symbols = (key: 'C' | 'Am') =>
      keyChords(key, 'C').chords.map(({ chord }) => chord.symbol);
    expect(symbols('C')).toEqual(['C', 'Dm', 'Em', 'F', 'G', 'Am', 'Bdim']);
    expect(symbols('Am')).toEqual(['Am', 'Bdim', 'C', 'Dm', 'Em', 'F', 'G']);
  });

  it('keyChords finds which are whole on a standard harp, by position', () => {
    // Blow is the chord of the harp's key, draw 1 to 4 the chord a fifth above, draw 4 to 6 a minor chord.
    expect(wholeOf('C', 'C')).toEqual(['I', 'ii', 'V', 'viidim']);
    expect(wholeOf('G', 'C')).toEqual(['I', 'IV']);
    expect(wholeOf('Dm', 'C')).toEqual(['i', 'bVII']);
  });

  it('keyChords marks the three chords of a blues', () => {
    const blues = keyChords('G', 'C').chords.filter(({ inBlues }) => inBlues);
    expect(blues.map(({ numeral }) => numeral)).toEqual(['I', 'IV', 'V']);
  });

  it('keyChords says the same of a transposed harp and key', () => {
    const places = (key: 'G' | 'A', harp: ReturnType<typeof makeHarp>) =>
      keyChords(key, harp).chords.map(({ whole }) => whole);
    expect(places('A', transposeHarp(makeHarp('C'), 2))).toEqual(places('G', makeHarp('C')));
  });

  it('keyChords refuses a key and an option that are none', () => {
    expect(() => keyChords('H' as 'G', 'C')).toThrow(
      expect.objectContaining({ code: 'KEY_UNKNOWN' }),
    );
    expect(() => keyChords('G', 'C', { level: 'bends' } as never)).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN' }),
    );
  });
});

describe('describeKeyChords', () => {
  it('describeKeyChords says where I and IV are whole, and that V is not', () => {
    const text = describeKeyChords(keyChords('G', 'C')).join('\n');
    expect(text).toContain('On a harp in C, 2nd position:');
    expect(text).toMatch(/I, G: whole on draw/u);
    expect(text).toMatch(/IV, C: whole on blow/u);
    expect(text).toContain('V, D: not whole, and not all its tones without bends.');
  });
});

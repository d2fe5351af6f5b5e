import { parseChord, parseKey, SCALE_DEGREES } from '@reedplate/pitch';
import { describe, expect, it } from 'vitest';
import { chordFamily } from './chord-family.js';
import { clashOf } from './clash.js';
import { CHORD_ROUGHNESS, PLAYING_STYLES, styleOfKey } from './styles.js';

describe('CHORD_ROUGHNESS', () => {
  it('CHORD_ROUGHNESS has a figure from 0 to 1 for every style, family and degree', () => {
    for (const style of PLAYING_STYLES) {
      for (const family of ['major', 'dominant', 'minor', 'diminished', 'open'] as const) {
        const row = CHORD_ROUGHNESS[style][family];
        expect(Object.keys(row).sort()).toEqual([...SCALE_DEGREES].sort());
        for (const degree of SCALE_DEGREES) {
          expect(row[degree]).toBeGreaterThanOrEqual(0);
          expect(row[degree]).toBeLessThanOrEqual(1);
        }
      }
    }
  });

  it('CHORD_ROUGHNESS is zero for the sixth and ninth of major and dominant chords in every style', () => {
    for (const style of PLAYING_STYLES) {
      for (const family of ['major', 'dominant'] as const) {
        expect([CHORD_ROUGHNESS[style][family]['2'], CHORD_ROUGHNESS[style][family]['6']]).toEqual([
          0, 0,
        ]);
      }
    }
  });

  // Which notes rest on a chord, tones and colours alike. Common practice, no source.
  it.each([
    ['blues', 'major', '1 2 3 5 6 b7'],
    ['blues', 'dominant', '1 2 3 5 6 b7'],
    ['blues', 'minor', '1 2 b3 4 5 6 b7'],
    ['blues', 'diminished', '1 b3 b5 6 b7'],
    ['blues', 'open', '1 2 b3 3 4 5 6 b7'],
    // In a major tune the flat seventh belongs to a dominant, and the flat third to minor chords alone.
    ['major', 'major', '1 2 3 5 6'],
    ['major', 'dominant', '1 2 3 5 6 b7'],
    ['major', 'minor', '1 2 b3 4 5 6 b7'],
    ['major', 'diminished', '1 b3 b5 6 b7'],
    ['major', 'open', '1 2 3 5 6'],
    // In a minor blues a power chord is heard as minor, and the sixth is a colour of major chords.
    ['minor', 'major', '1 2 3 5 6 b7'],
    ['minor', 'dominant', '1 2 3 5 6 b7'],
    ['minor', 'minor', '1 2 b3 4 5 b7'],
    ['minor', 'diminished', '1 b3 b5 6 b7'],
    ['minor', 'open', '1 2 b3 4 5 b7'],
  ] as const)('CHORD_ROUGHNESS of %s over a %s chord is none for %s', (style, family, smooth) => {
    const row = CHORD_ROUGHNESS[style][family];
    expect(SCALE_DEGREES.filter((degree) => row[degree] === 0).join(' ')).toBe(smooth);
  });

  it('CHORD_ROUGHNESS is a plain clash for a major seventh over a dominant in every style', () => {
    for (const style of PLAYING_STYLES) expect(CHORD_ROUGHNESS[style].dominant['7']).toBe(1);
  });
});

describe('chordFamily', () => {
  it.each([
    ['G', 'major'],
    ['Gmaj7', 'major'],
    ['G6', 'major'],
    ['G7', 'dominant'],
    ['G7#9', 'dominant'],
    ['Gm', 'minor'],
    ['Gm7', 'minor'],
    ['GmMaj7', 'minor'],
    ['Gdim7', 'diminished'],
    ['Gm7b5', 'diminished'],
    ['G5', 'open'],
    ['G7sus4', 'open'],
  ])('chordFamily of %s is %s', (symbol, family) => {
    expect(chordFamily(parseChord(symbol))).toBe(family);
  });
});

describe('clashOf', () => {
  it('clashOf names the tone a semitone away', () => {
    expect(clashOf('4', parseChord('G7'), 'blues')?.against).toBe('3');
    expect(clashOf('7', parseChord('G7'), 'blues')?.against).toBe('b7');
    expect(clashOf('3', parseChord('Gm'), 'minor')?.against).toBe('b3');
  });

  it('clashOf is undefined for a colour', () => {
    expect(clashOf('6', parseChord('G7'), 'blues')).toBeUndefined();
    expect(clashOf('4', parseChord('Gm7'), 'minor')).toBeUndefined();
  });
});

describe('styleOfKey', () => {
  it('styleOfKey is minor in a minor key and blues in a major one', () => {
    expect(styleOfKey('C#m')).toBe('minor');
    expect(styleOfKey(parseKey('Bb'))).toBe('blues');
  });

  it('styleOfKey throws KEY_UNKNOWN for what is no key', () => {
    expect(() => styleOfKey('H' as 'B')).toThrow(expect.objectContaining({ code: 'KEY_UNKNOWN' }));
  });
});

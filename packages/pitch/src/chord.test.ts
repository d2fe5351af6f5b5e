import { describe, expect, test } from 'vitest';
import { parseChord } from './chord.js';

const names = (symbol: string): string =>
  parseChord(symbol)
    .tones.map((tone) => tone.name)
    .join(' ');

describe('parseChord', () => {
  test('gives symbol, root, quality and tones with degrees', () => {
    expect(parseChord('Bb7')).toEqual({
      symbol: 'Bb7',
      root: 'Bb',
      quality: '7',
      tones: [
        { degree: '1', pitchClass: 10, name: 'Bb' },
        { degree: '3', pitchClass: 2, name: 'D' },
        { degree: '5', pitchClass: 5, name: 'F' },
        { degree: 'b7', pitchClass: 8, name: 'Ab' },
      ],
    });
  });

  test.each([
    ['C', 'C E G'],
    ['Db7', 'Db F Ab Cb'],
    ['F#7', 'F# A# C# E'],
    ['Gb7', 'Gb Bb Db Fb'],
    ['Ebm7b5', 'Eb Gb Bbb Db'],
    ['C°7', 'C Eb Gb Bbb'],
    ['G13', 'G B D F A E'],
    ['E7#9', 'E G# B D F##'],
    ['C5', 'C G'],
    ['C##maj7', 'C## E## G## B##'],
    ['Fbb', 'Fbb Abb Cbb'],
  ])('spells %s as %s', (symbol, spelled) => {
    expect(names(symbol)).toBe(spelled);
  });

  test('gives the plain name where a tone would need three signs', () => {
    expect(names('B##')).toBe('B## F Ab');
    expect(names('Fbb7')).toBe('Fbb Abb Cbb Db');
  });

  test.each([
    ['B♭♭7', 'Bbb7'],
    ['B𝄫7', 'Bbb7'],
    ['Cx', 'C##'],
    ['CMaj7', 'Cmaj7'],
    [' G7 ', 'G7'],
    ['C/G', 'C/G'],
    ['C7/B♭', 'C7/Bb'],
    ['C6/9', 'C69'],
    ['C6/9/G', 'C69/G'],
    ['Cm/maj7/Eb', 'CmMaj7/Eb'],
    ['Abb9', 'Abb9'],
    ['C7b9sus4', 'C7b9sus4'],
  ])('writes %s as %s', (symbol, canonical) => {
    expect(parseChord(symbol).symbol).toBe(canonical);
  });

  test('takes signs after a letter for the root, never for the suffix', () => {
    expect(parseChord('Cb9sus')).toMatchObject({ root: 'Cb', quality: '9sus4' });
    expect(parseChord('C#9')).toMatchObject({ root: 'C#', quality: '9' });
  });

  test('keeps the bass, which need not be a tone', () => {
    expect(parseChord('C/F#').bass).toBe('F#');
    expect('bass' in parseChord('C')).toBe(false);
  });

  test.each<[unknown, string | undefined]>([
    ['c7', 'C7'],
    ['H7', 'B7'],
    ['bb7', 'Bb7'],
    ['A♭b9', 'Ab9'],
    ['Cdimm7', 'Cdim7'],
    ['C4', undefined],
    ['', undefined],
    ['NC', undefined],
    ['C/', undefined],
    ['C7/H', undefined],
    ['valueOf', undefined],
    ['__proto__', undefined],
    ['C\uD800', undefined],
    [`C${'/G'.repeat(50_000)}`, undefined],
    [7, undefined],
    [null, undefined],
    [undefined, undefined],
    [['C'], undefined],
  ])('refuses %j and suggests %s', (symbol, nearest) => {
    expect(() => parseChord(symbol as string)).toThrow(
      expect.objectContaining({ code: 'CHORD_UNKNOWN', value: symbol, nearest }),
    );
  });

  test('gives frozen chords', () => {
    const chord = parseChord('G7');
    expect(Object.isFrozen(chord) && Object.isFrozen(chord.tones)).toBe(true);
    expect(chord.tones.every((tone) => Object.isFrozen(tone))).toBe(true);
  });
});

import { describe, expect, test } from 'vitest';
import { parseNumeral } from './numeral.js';

describe('parseNumeral', () => {
  test('takes a numeral apart', () => {
    expect(parseNumeral('bVI7')).toEqual({
      text: 'bVI7',
      step: 6,
      alteration: -1,
      quality: '7',
      semitones: 8,
    });
  });

  test('gives what a secondary chord leads to, and counts its root from the tonic', () => {
    expect(parseNumeral('V7/ii')).toEqual({
      text: 'V7/ii',
      step: 5,
      alteration: 0,
      quality: '7',
      semitones: 9,
      of: { step: 2, alteration: 0, text: 'ii' },
    });
    expect(parseNumeral('V7/♭III')).toMatchObject({ text: 'V7/bIII', semitones: 10 });
    expect(parseNumeral('vii°7/V')).toMatchObject({ text: 'viidim7/V', semitones: 6 });
  });

  test.each([
    ['I', '', 'I'],
    ['I7', '7', 'I7'],
    ['i', 'm', 'i'],
    ['i7', 'm7', 'i7'],
    ['im7', 'm7', 'i7'],
    ['IIm7', 'm7', 'ii7'],
    ['i-7', 'm7', 'i7'],
    ['imaj7', 'mMaj7', 'imaj7'],
    ['iM7', 'mMaj7', 'imaj7'],
    ['Imaj7', 'maj7', 'Imaj7'],
    ['I△7', 'maj7', 'Imaj7'],
    ['iv6', 'm6', 'iv6'],
    ['iiø7', 'm7b5', 'iim7b5'],
    ['ii7b5', 'm7b5', 'iim7b5'],
    ['#IVdim7', 'dim7', '#ivdim7'],
    ['#iv°7', 'dim7', '#ivdim7'],
    ['I+', 'aug', 'Iaug'],
    ['V7♯9', '7#9', 'V7#9'],
    ['V7sus4', '7sus4', 'V7sus4'],
    ['I5', '5', 'I5'],
    ['IVquartal', 'quartal', 'IVquartal'],
    [' V9 ', '9', 'V9'],
  ])('reads %j as the quality %j and writes %s', (text, quality, canonical) => {
    expect(parseNumeral(text)).toMatchObject({ quality, text: canonical });
  });

  test.each<[unknown, string | undefined]>([
    ['VIII', 'III'],
    ['iaug', 'Iaug'],
    ['isus4', 'Isus4'],
    ['VI♭7', 'VI7'],
    ['Ii', 'II'],
    ['♭VII77', 'bVII7'],
    ['bVImja7', 'bVImaj7'],
    ['#ivdim77', '#ivdim7'],
    ['', undefined],
    ['xx', undefined],
    ['bbVII', undefined],
    ['V7/', undefined],
    ['V7/V/V', undefined],
    ['0', undefined],
    ['valueOf', undefined],
    ['__proto__', undefined],
    ['V\uD800', undefined],
    ['V'.repeat(100_000), undefined],
    [`V${'/'.repeat(100_000)}V`, undefined],
    [5, undefined],
    [null, undefined],
    [undefined, undefined],
    [['V'], undefined],
  ])('refuses %j and suggests %s', (text, nearest) => {
    expect(() => parseNumeral(text as string)).toThrow(
      expect.objectContaining({ code: 'NUMERAL_UNKNOWN', value: text }),
    );
    if (nearest !== undefined) {
      expect(() => parseNumeral(text as string)).toThrow(expect.objectContaining({ nearest }));
    }
  });

  test('suggests only what it reads', () => {
    for (const text of ['VIII', 'iaug', 'V77', '♭VII77', '#ivdim77', 'iiii', 'V7/V/V', 'bbVII']) {
      let nearest: string | undefined;
      try {
        parseNumeral(text);
      } catch (error) {
        nearest = (error as { nearest?: string }).nearest;
      }
      if (nearest !== undefined) expect(parseNumeral(nearest).text).toBe(nearest);
    }
  });

  test('gives frozen numerals', () => {
    const numeral = parseNumeral('V7/ii');
    expect(Object.isFrozen(numeral) && Object.isFrozen(numeral.of)).toBe(true);
  });
});

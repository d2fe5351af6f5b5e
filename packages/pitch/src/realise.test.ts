import { describe, expect, test } from 'vitest';
import { type Chord, parseChord } from './chord.js';
import type { Key, KeyName } from './key.js';
import { type Numeral, parseNumeral } from './numeral.js';
import { chordOfNumeral, numeralOfChord } from './realise.js';

const code = (name: string) => expect.objectContaining({ code: name });

describe('chordOfNumeral', () => {
  test.each<[string, KeyName, string]>([
    ['I7', 'G', 'G7'],
    ['IV7', 'Ab', 'Db7'],
    ['V7', 'F#', 'C#7'],
    ['i7', 'A', 'Am7'],
    ['iv', 'C#m', 'F#m'],
    ['V7', 'Gbm', 'Db7'],
    ['bVI7', 'Cm', 'Ab7'],
    ['bVI7', 'Gb', 'Ebb7'],
    ['#ivdim7', 'C', 'F#dim7'],
    ['#ivdim7', 'F', 'Bdim7'],
    ['V7/V', 'G', 'A7'],
    ['V7/ii', 'Bb', 'G7'],
    ['viidim7/V', 'C', 'F#dim7'],
    ['V7/bIII', 'C', 'Bb7'],
  ])('realises %s in %s as %s', (numeral, key, symbol) => {
    expect(chordOfNumeral(numeral, key).symbol).toBe(symbol);
  });

  test('takes the numeral parsed, or a copy that has been through JSON', () => {
    const numeral = parseNumeral('V7/ii');
    const copy = JSON.parse(JSON.stringify(numeral)) as Numeral;
    expect(chordOfNumeral(numeral, 'G')).toEqual(chordOfNumeral('V7/ii', 'G'));
    expect(chordOfNumeral(copy, 'G')).toEqual(chordOfNumeral('V7/ii', 'G'));
  });

  test('gives the plain name to a root that would need three signs', () => {
    expect(chordOfNumeral('#III', 'D#').symbol).toBe('Ab');
    expect(chordOfNumeral('bVI', 'Abm').symbol).toBe('Fb');
  });

  test('refuses what is no numeral and what is no key', () => {
    for (const numeral of ['VIII', '', null, undefined, {}, { text: 'VIII' }, 5]) {
      expect(() => chordOfNumeral(numeral as string, 'C')).toThrow(code('NUMERAL_UNKNOWN'));
    }
    expect(() => chordOfNumeral('I', 'H' as KeyName)).toThrow(code('KEY_UNKNOWN'));
    expect(() => chordOfNumeral('I', undefined as unknown as Key)).toThrow(code('KEY_UNKNOWN'));
  });
});

describe('numeralOfChord', () => {
  test.each<[string, KeyName, string]>([
    ['Db7', 'Ab', 'IV7'],
    ['Am7', 'G', 'ii7'],
    ['Ab7', 'C', 'bVI7'],
    ['G#7', 'C', '#V7'],
    ['F#dim7', 'C', '#ivdim7'],
    ['Fm7', 'Cm', 'iv7'],
    ['CmMaj7', 'C', 'imaj7'],
    ['A#7', 'B', 'VII7'],
    ['Bb7', 'B', 'bI7'],
  ])('calls %s in %s %s', (symbol, key, numeral) => {
    expect(numeralOfChord(symbol, key).text).toBe(numeral);
  });

  test('leaves the bass out', () => {
    expect(numeralOfChord('C/G', 'C').text).toBe('I');
    // A root two signs away from the key's own letter is read as it sounds.
    expect(numeralOfChord('D#7', 'Gb')).toEqual(numeralOfChord('Eb7', 'Gb'));
  });

  test('takes the chord parsed, or a copy that has been through JSON', () => {
    const copy = JSON.parse(JSON.stringify(parseChord('Db7'))) as Chord;
    expect(numeralOfChord(copy, 'Ab')).toEqual(numeralOfChord(parseChord('Db7'), 'Ab'));
  });

  test('refuses what is no chord and what is no key', () => {
    for (const chord of ['H7', '', null, undefined, {}, { symbol: 'H7' }, 5]) {
      expect(() => numeralOfChord(chord as string, 'C')).toThrow(code('CHORD_UNKNOWN'));
    }
    expect(() => numeralOfChord('C', 'H' as KeyName)).toThrow(code('KEY_UNKNOWN'));
  });
});

import { chordOfNumeral, chordSuffixes, parseNumeral } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numerals } from './arbitraries.js';
import { coloursOf, plainStep, withQuality } from './quality.js';

describe('coloursOf', () => {
  test.each([
    ['I', '3', '5', undefined, false],
    ['i7', 'b3', '5', 'b7', false],
    ['Imaj7', '3', '5', '7', false],
    ['iidim7', 'b3', 'b5', 'bb7', false],
    ['iim7b5', 'b3', 'b5', 'b7', false],
    ['Iaug', '3', '#5', undefined, false],
    ['V7b9', '3', '5', 'b7', true],
    ['V7#9', '3', '5', 'b7', true],
    ['I9', '3', '5', 'b7', false],
    ['Isus4', undefined, '5', undefined, false],
    ['I6', '3', '5', undefined, false],
  ])('coloursOf %s', (numeral, third, fifth, seventh, altersNinth) => {
    expect(coloursOf(numeral)).toEqual({ third, fifth, seventh, altersNinth });
  });
});

describe('withQuality', () => {
  test('withQuality keeps the degree, its sign and its target', () => {
    expect(withQuality('IV7', 'm7')).toBe('iv7');
    expect(withQuality('#ivdim7', '7')).toBe('#IV7');
    expect(withQuality('bVI', 'maj7')).toBe('bVImaj7');
    expect(withQuality('V7/ii', '9')).toBe('V9/ii');
  });

  test('withQuality gives the quality asked for and the root that was', () => {
    fc.assert(
      fc.property(numerals, fc.constantFrom(...chordSuffixes()), (numeral, suffix) => {
        const changed = withQuality(numeral, suffix);
        expect(parseNumeral(changed).quality).toBe(parseNumeral(`I${suffix}`).quality);
        expect(chordOfNumeral(changed, 'C').root).toBe(chordOfNumeral(numeral, 'C').root);
      }),
    );
  });
});

describe('plainStep', () => {
  test.each([
    ['I7', 1],
    ['iv', 4],
    ['viim7b5', 7],
    ['bVI', undefined],
    ['#ivdim7', undefined],
    ['V7/ii', undefined],
  ])('plainStep of %s is %s', (numeral, step) => {
    expect(plainStep(numeral)).toBe(step);
  });
});

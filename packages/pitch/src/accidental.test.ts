import { describe, expect, test } from 'vitest';
import { ACCIDENTAL_PATTERN, asciiSigns } from './accidental.js';

describe('asciiSigns', () => {
  test.each([
    ['B♭', 'Bb'],
    ['F♯m7♭5', 'F#m7b5'],
    ['C𝄪', 'C##'],
    ['B𝄫', 'Bbb'],
    ['Cx', 'C##'],
    ['G7', 'G7'],
  ])('writes %s as %s', (printed, ascii) => {
    expect(asciiSigns(printed)).toBe(ascii);
  });
});

describe('ACCIDENTAL_PATTERN', () => {
  test('matches each sign whole, single and double, and nothing else', () => {
    const sign = new RegExp(`^(?:${ACCIDENTAL_PATTERN})$`, 'u');
    for (const text of ['#', 'b', '##', 'bb', '♯', '♭', '♯♯', '♭♭', '𝄪', '𝄫', 'x']) {
      expect(text).toMatch(sign);
    }
    for (const text of ['', '#b', 'b#', '###', 'n', '♯b']) expect(text).not.toMatch(sign);
  });
});

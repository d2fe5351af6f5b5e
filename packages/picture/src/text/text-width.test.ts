import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sizeToFit, textWidth, wrapText } from './text-width.js';

describe('textWidth', () => {
  it('textWidth adds up characters and grows with the size', () => {
    expect(textWidth('G7', 10)).toBeCloseTo((778 + 636) / 100);
    expect(textWidth('G7', 20)).toBeCloseTo(2 * textWidth('G7', 10));
    expect(textWidth('G7', 10, 'bold')).toBeGreaterThan(textWidth('G7', 10));
    expect(textWidth('', 10)).toBe(0);
  });

  it('textWidth takes a character that it does not know for a wide one', () => {
    expect(textWidth('𝄞', 10)).toBe(11);
    expect(textWidth('和', 10)).toBe(11);
  });
});

describe('wrapText', () => {
  it('wrapText keeps every word and no line wider than asked', () => {
    const words = fc.array(fc.stringMatching(/^[a-zA-Z0-9#]{1,30}$/u), { maxLength: 12 });
    fc.assert(
      fc.property(words, fc.integer({ min: 40, max: 300 }), (given, width) => {
        const lines = wrapText(given.join(' '), width, 14);
        expect(lines.join('').replaceAll(' ', '')).toBe(given.join(''));
        for (const line of lines) expect(textWidth(line, 14)).toBeLessThanOrEqual(width);
      }),
    );
  });
});

describe('sizeToFit', () => {
  it('sizeToFit keeps the size wanted where there is room, else takes the largest that fits', () => {
    expect(sizeToFit(['I7', 'IV7'], { width: 100, wanted: 20 })).toBe(20);
    const size = sizeToFit(['I7', 'bVII7'], { width: 30, wanted: 20 });
    expect(size).toBeLessThan(20);
    expect(textWidth('bVII7', size)).toBeLessThanOrEqual(30);
    expect(textWidth('bVII7', size + 0.2)).toBeGreaterThan(30);
    expect(sizeToFit([], { width: 1, wanted: 20 })).toBe(20);
  });
});

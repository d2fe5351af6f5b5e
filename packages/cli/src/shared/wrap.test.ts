import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { widthOf, wrapLine, wrapWords } from './wrap.js';

const widths = fc.integer({ min: 5, max: 60 });
const words = fc.array(fc.stringMatching(/^[a-zé'♭-]{1,30}$/u), { maxLength: 20 });
const lines = fc
  .tuple(fc.integer({ min: 0, max: 12 }), words)
  .map(([indent, all]) => ' '.repeat(indent) + all.join(' '));
const red = (text: string): string => `\u001b[31m${text}\u001b[0m`;

describe('wrapLine', () => {
  test('wrapLine gives no line wider than the width', () => {
    fc.assert(
      fc.property(lines, widths, (line, width) => {
        for (const part of wrapLine(line, width)) expect(widthOf(part)).toBeLessThanOrEqual(width);
      }),
    );
  });

  test('wrapLine loses nothing but blanks', () => {
    const bare = (text: string): string => text.replaceAll(' ', '');
    fc.assert(
      fc.property(lines, widths, (line, width) => {
        expect(bare(wrapLine(line, width).join(''))).toBe(bare(line));
      }),
    );
  });

  test('wrapLine leaves alone what fits', () => {
    fc.assert(
      fc.property(lines, (line) => {
        expect(wrapLine(line, Math.max(1, widthOf(line)))).toEqual([line]);
      }),
    );
  });

  test('wrapLine indents what goes on below by two more than the line', () => {
    expect(wrapLine('  - whole chords: G7 on draw 1-5, C7 on blow 1-10', 30)).toEqual([
      '  - whole chords: G7 on draw',
      '    1-5, C7 on blow 1-10',
    ]);
  });

  test('wrapLine does not count the codes of colours', () => {
    expect(wrapLine(red('a word'), 6)).toEqual([red('a word')]);
  });

  test('wrapLine breaks a word that is wider than the room', () => {
    expect(wrapLine('abcdefgh', 5)).toEqual(['abcde', '  fgh']);
  });
});

describe('wrapWords', () => {
  test('wrapWords of no words is one empty line', () => {
    expect(wrapWords('', 10)).toEqual(['']);
  });

  test('wrapWords takes as many words a line as fit', () => {
    expect(wrapWords('ab cd ef gh', 5)).toEqual(['ab cd', 'ef gh']);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { tokenise } from './tokens.js';

const texts = (text: string) => tokenise(text).map((token) => token.text);

describe('tokenise', () => {
  test('tokenise cuts bar lines, endings, marks and stray colons', () => {
    expect(texts('|: I7|1. V7/V :|2.I7||')).toEqual([
      '|:',
      'I7',
      '|',
      '1.',
      'V7/V',
      ':|',
      '2.',
      'I7',
      '||',
    ]);
    expect(texts('a:b')).toEqual(['a', ':', 'b']);
    expect(texts('12/8')).toEqual(['12/8']);
    expect(texts('1.2,3. I')).toEqual(['1.2,3.', 'I']);
  });

  test.each([
    ['|', false, false],
    ['||', false, false],
    ['|:', false, true],
    ['||:', false, true],
    [':|', true, false],
    [':||', true, false],
    [':|:', true, true],
    [':||:', true, true],
  ])('tokenise reads the bar line %s', (text, closes, opens) => {
    expect(tokenise(text)).toEqual([{ kind: 'bar-line', text, closes, opens, line: 1, column: 1 }]);
  });

  test('tokenise counts lines of any kind, and columns from 1', () => {
    const places = tokenise('a\nb\r\n  c\rd').map(({ text, line, column }) => [text, line, column]);
    expect(places).toEqual([
      ['a', 1, 1],
      ['b', 2, 1],
      ['c', 3, 3],
      ['d', 4, 1],
    ]);
  });

  test('tokenise loses nothing but white space, and places every piece where it stands', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const tokens = tokenise(text);
        expect(tokens.map((token) => token.text).join('')).toBe(text.replaceAll(/\s/gu, ''));
        const lines = text.split(/\r\n|\n|\r/u);
        for (const { text: piece, line, column } of tokens) {
          expect(lines[line - 1]?.slice(column - 1, column - 1 + piece.length)).toBe(piece);
        }
      }),
    );
  });
});

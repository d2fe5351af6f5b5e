import { describe, expect, test } from 'vitest';
import { readPieceAndFormat } from './piece-file.js';

const terminalWith = (text: string) => ({
  readBytes: () => new TextEncoder().encode(text),
  err: () => {},
});

describe('readPieceAndFormat', () => {
  test('readPieceAndFormat knows a file by what is in it, whatever it is called', () => {
    const { format } = readPieceAndFormat('tune.mid', terminalWith('X:1\nK:G\nGABc|]'));
    expect(format).toBe('abc');
  });

  test.each([
    ['tune.tab', '-4 +4x -3', 'TAB_SYNTAX', '+4x'],
    ['tune.TAB', '-4 +99 -3', 'TAB_SYNTAX', '+99'],
    ['tune.abc', 'T:No number, no key\nGABc|]', 'ABC_SYNTAX', undefined],
    ['tune.json', 'notes: 60 62', 'JSON_MALFORMED', undefined],
    ['tune.musicxml', 'score', 'MUSICXML_MALFORMED', undefined],
  ])(
    'readPieceAndFormat lets the reader that %s asks for say what is wrong',
    (file, text, code, value) => {
      expect(() => readPieceAndFormat(file, terminalWith(text), { harp: 'C' })).toThrow(
        expect.objectContaining({
          code,
          where: expect.objectContaining({ file }),
          ...(value === undefined ? {} : { value }),
        }),
      );
    },
  );

  test.each(['letter.txt', 'letter', 'letter.tab'])(
    'readPieceAndFormat refuses an empty %s, and text that no ending explains',
    (file) => {
      expect(() => readPieceAndFormat(file, terminalWith(''))).toThrow(
        expect.objectContaining({ code: 'FORMAT_UNKNOWN', value: 'an empty file' }),
      );
      if (file.endsWith('.tab')) return;
      expect(() => readPieceAndFormat(file, terminalWith('Dear reader'))).toThrow(
        expect.objectContaining({ code: 'FORMAT_UNKNOWN', value: 'Dear reader' }),
      );
    },
  );
});

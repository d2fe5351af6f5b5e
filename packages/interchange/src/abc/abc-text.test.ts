import { describe, expect, test } from 'vitest';
import { readAbcText } from './abc-text.js';

describe('readAbcText', () => {
  // ABC 2.1, supported accents and ligatures (from memory).
  test.each([
    ["caf\\'e", 'café'],
    ['\\`a \\^e \\~n \\"u \\cc', 'à ê ñ ü ç'],
    ['Stra\\sse', 'Straße'],
    ['\\ae \\AE \\oe \\OE \\aa \\AA \\/o \\/O', 'æ Æ œ Œ å Å ø Ø'],
    ['\\u00e9t\\u00E9', 'été'],
    ['50\\% \\& \\\\', '50% & \\'],
    ['  plain  ', 'plain'],
    ['\\x', '\\x'],
  ])('readAbcText reads %j as %j', (text, expected) => {
    expect(readAbcText(text)).toBe(expected);
  });
});

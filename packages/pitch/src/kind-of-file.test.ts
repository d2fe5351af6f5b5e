import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { kindOfFile } from './kind-of-file.js';

const bytes = (text: string): Uint8Array => Uint8Array.from(text, (sign) => sign.charCodeAt(0));

describe('kindOfFile', () => {
  test.each([
    ['a PNG picture', '\u0089PNG\r\n\u001a\n\u0000\u0000\u0000\rIHDR'],
    ['a JPEG picture', '\u00ff\u00d8\u00ff\u00e0\u0000\u0010JFIF'],
    ['a PDF document', '%PDF-1.7\n'],
    ['a WAV sound file', 'RIFF\u0024\u0008\u0000\u0000WAVEfmt '],
    ['a web page', '\n<!doctype HTML><html lang="en">'],
    ['a ZIP archive', 'PK\u0003\u0004\u0014\u0000'],
    ['a file of bytes that are no text', '\u0001\u0002\u0003'],
    ['an empty file', ''],
  ])('kindOfFile knows %s', (kind, text) => {
    expect(kindOfFile(bytes(text))).toBe(kind);
  });

  test('kindOfFile says nothing of text in any writing', () => {
    const letters = fc.string({ unit: fc.constantFrom(...'abc XYZ♭ß日本\n\t|{[1'), minLength: 1 });
    fc.assert(
      fc.property(letters, (text) => kindOfFile(new TextEncoder().encode(text)) === undefined),
    );
  });

  test('kindOfFile never fails, whatever the bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 600 }), (any) =>
        ['string', 'undefined'].includes(typeof kindOfFile(any)),
      ),
    );
  });
});

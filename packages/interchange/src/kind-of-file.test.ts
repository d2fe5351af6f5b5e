import { makeLine } from '@reedplate/line';
import { describe, expect, test } from 'vitest';
import { detectFormat, readPiece, writeMidi } from './index.js';
import { kindOfFile } from './kind-of-file.js';

const bytes = (text: string): Uint8Array => Uint8Array.from(text, (sign) => sign.charCodeAt(0));

describe('kindOfFile', () => {
  test.each([
    ['a PNG picture', '\u0089PNG\r\n\u001a\n\u0000\u0000\u0000\rIHDR'],
    ['a JPEG picture', '\u00ff\u00d8\u00ff\u00e0\u0000\u0010JFIF'],
    ['a PDF document', '%PDF-1.7\n'],
    ['a WAV sound file', 'RIFF\u0024\u0008\u0000\u0000WAVEfmt '],
    ['an MP3 sound file', 'ID3\u0004\u0000'],
    ['an MPEG-4 file', '\u0000\u0000\u0000\u0020ftypM4A '],
    ['an Ogg sound file', 'OggS\u0000\u0002'],
    ['a web page', '\n<!doctype HTML><html lang="en">'],
    ['a file of bytes that are no text', '\u0001\u0002\u0003'],
    ['an empty file', ''],
  ])('kindOfFile knows %s, and detectFormat says so', (kind, text) => {
    expect(kindOfFile(bytes(text))).toBe(kind);
    expect(() => detectFormat(bytes(text))).toThrow(
      expect.objectContaining({ code: 'FORMAT_UNKNOWN', value: kind }),
    );
    expect(() => readPiece(bytes(text))).toThrow(
      new RegExp(`^"${kind}" is not in a known format`, 'u'),
    );
  });

  test('kindOfFile knows an archive, which may be a compressed score', () => {
    expect(kindOfFile(bytes('PK\u0003\u0004\u0014\u0000'))).toBe('a ZIP archive');
  });

  test('kindOfFile says nothing of what is read, or of text', () => {
    const line = makeLine([{ start: 0, duration: 960, pitch: 67 }]);
    expect(detectFormat(writeMidi({ line }))).toBe('midi');
    expect(kindOfFile(bytes('Dear reader'))).toBeUndefined();
    expect(kindOfFile(new TextEncoder().encode('Grüße ♭'))).toBeUndefined();
  });
});

import { describe, expect, test } from 'vitest';
import { detectFormat, readAbc, readMusicXml, readPiece } from '../index.js';

const bytes = (text: string): Uint8Array => Uint8Array.from(text, (sign) => sign.charCodeAt(0));

const FOREIGN: readonly (readonly [string, string])[] = [
  ['a PNG picture', '\u0089PNG\r\n\u001a\n\u0000\u0000\u0000\rIHDR'],
  ['a JPEG picture', '\u00ff\u00d8\u00ff\u00e0\u0000\u0010JFIF'],
  ['a PDF document', '%PDF-1.7\n'],
  ['a WAV sound file', 'RIFF\u0024\u0008\u0000\u0000WAVEfmt '],
  ['an MP3 sound file', 'ID3\u0004\u0000'],
  ['an MPEG-4 file', '\u0000\u0000\u0000\u0020ftypM4A '],
  ['an Ogg sound file', 'OggS\u0000\u0002'],
  ['a web page', '\n<!doctype HTML><html lang="en">'],
  ['a file of bytes that are no text', '\u0001\u0002\u0003'],
];

describe('files of other kinds', () => {
  test.each(FOREIGN)('detectFormat and readPiece say that it is %s', (kind, text) => {
    const named = expect.objectContaining({ code: 'FORMAT_UNKNOWN', value: kind });
    expect(() => detectFormat(bytes(text))).toThrow(named);
    expect(() => readPiece(bytes(text))).toThrow(named);
  });

  test.each(FOREIGN)(
    'readers of one format say so as well, and not the bytes of %s',
    (kind, text) => {
      const named = expect.objectContaining({ code: 'FORMAT_UNKNOWN', value: kind });
      expect(() => readAbc(bytes(text))).toThrow(named);
      expect(() => readPiece(bytes(text), { format: 'tab', harp: 'C' })).toThrow(named);
      expect(() => readPiece(bytes(text), { format: 'line' })).toThrow(named);
      expect(() => readMusicXml(bytes(text))).toThrow(named);
    },
  );

  test('detectFormat says of an empty file that it is empty', () => {
    expect(() => detectFormat(new Uint8Array())).toThrow(
      /^"an empty file" is not in a known format/u,
    );
  });
});

describe('tablature with a hole that the harp lacks', () => {
  test.each(['-4 +11 -3 +4', '4 11d 3d', "-2 -11' +4 | -3"])(
    'detectFormat knows %j for tablature, and its reader names the hole',
    (text) => {
      if (text.includes('11d')) {
        expect(() => readPiece(text, { format: 'tab', harp: 'C' })).toThrow(/"11d" cannot stand/u);
        return;
      }
      expect(detectFormat(text)).toBe('tab');
      expect(() => readPiece(text, { harp: 'C' })).toThrow(
        expect.objectContaining({ code: 'TAB_SYNTAX', value: expect.stringMatching(/^[+-]11/u) }),
      );
    },
  );

  test('detectFormat reads two holes, not one, where a harp of ten has both', () => {
    expect(readPiece('+45', { harp: 'C' }).line.notes.map(({ pitch }) => pitch)).toEqual([72, 76]);
  });
});

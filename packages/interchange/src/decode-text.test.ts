import { kindOfFile } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { decodeText, LARGEST_INPUT, requireSize } from './decode-text.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

/** Bytes of a text in UTF-16, high byte first or last, with or without a byte order mark. */
function utf16(text: string, { big, mark }: { readonly big: boolean; readonly mark: boolean }) {
  const units = Array.from(mark ? `\uFEFF${text}` : text, (sign) => sign);
  const codes = units.flatMap((sign) =>
    Array.from({ length: sign.length }, (_, at) => sign.charCodeAt(at)),
  );
  return Uint8Array.from(
    codes.flatMap((code) => (big ? [code >> 8, code & 0xff] : [code & 0xff, code >> 8])),
  );
}

const texts = fc.string({ unit: 'grapheme' }).map((text) => text.replaceAll('\uFEFF', ''));

describe('decodeText', () => {
  test('decodeText reads UTF-8 with and without a byte order mark', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const bytes = new TextEncoder().encode(text);
        expect(decodeText(bytes)).toBe(text);
        expect(decodeText(Uint8Array.of(0xef, 0xbb, 0xbf, ...bytes))).toBe(text);
      }),
    );
  });

  test.each([true, false])('decodeText reads UTF-16 with its byte order mark, big: %j', (big) => {
    fc.assert(
      fc.property(texts, (text) => {
        expect(decodeText(utf16(text, { big, mark: true }))).toBe(text);
      }),
    );
  });

  test.each([true, false])('decodeText knows XML in UTF-16 without a mark, big: %j', (big) => {
    const xml = '<?xml version="1.0" encoding="UTF-16"?><a>é♭</a>';
    expect(decodeText(utf16(xml, { big, mark: false }))).toBe(xml);
  });

  test('decodeText takes bytes that are no UTF-8 for Latin 1', () => {
    expect(decodeText(Uint8Array.of(0x63, 0x61, 0x66, 0xe9))).toBe('café');
  });

  test('decodeText gives text back as it is, without a mark', () => {
    expect(decodeText('\uFEFFX:1')).toBe('X:1');
    fc.assert(
      fc.property(texts, (text) => {
        expect(decodeText(text)).toBe(text);
      }),
    );
  });

  test('decodeText decodes any bytes that may be text', () => {
    fc.assert(
      fc.property(fc.uint8Array({ min: 9, maxLength: 60 }), (bytes) => {
        fc.pre(bytes.length === 0 || kindOfFile(bytes) === undefined);
        expect(typeof decodeText(bytes)).toBe('string');
      }),
      { numRuns: 300 },
    );
  });

  test('decodeText refuses bytes that no text has, and says what they are', () => {
    fc.assert(
      fc.property(fc.uint8Array({ min: 32, max: 126, maxLength: 60 }), (bytes) => {
        expect(() => decodeText(Uint8Array.of(65, 0, ...bytes))).toThrow(
          expect.objectContaining({
            code: 'FORMAT_UNKNOWN',
            value: 'a file of bytes that are no text',
          }),
        );
      }),
    );
  });

  test.each([undefined, null, 1, [65], {}])('decodeText refuses %j', (input) => {
    expect(() => decodeText(input as unknown as string)).toThrowError(
      expect.objectContaining({ code: 'FORMAT_UNKNOWN' }),
    );
  });

  test('decodeText and requireSize refuse more than 16 MB, and take as much', () => {
    expect(requireSize('kept', LARGEST_INPUT)).toBe('kept');
    for (const large of [new Uint8Array(LARGEST_INPUT + 1), 'x'.repeat(LARGEST_INPUT + 1)]) {
      expect(() => decodeText(large)).toThrowError(
        expect.objectContaining({ code: 'FILE_TOO_LARGE', value: `${LARGEST_INPUT + 1} bytes` }),
      );
    }
  });
});

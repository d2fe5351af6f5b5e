import { closeSync, ftruncateSync, mkdtempSync, openSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { LARGEST_FILE, readBytes, readText } from './read-text.js';

const folder = mkdtempSync(join(tmpdir(), 'reedplate-'));
afterAll(() => rmSync(folder, { recursive: true }));

function sparseFile(name: string, bytes: number): string {
  const path = join(folder, name);
  const file = openSync(path, 'w');
  ftruncateSync(file, bytes);
  closeSync(file);
  return path;
}

describe('readBytes', () => {
  test('readBytes reads bytes as they are, and does not ask for text where there is no file', () => {
    const path = join(folder, 'take.mid');
    const bytes = Uint8Array.from({ length: 256 }, (_, at) => at);
    writeFileSync(path, bytes);
    expect(Uint8Array.from(readBytes(path))).toEqual(bytes);
    expect(() => readBytes(join(folder, 'gone.mid'))).toThrowError(
      /gone\.mid" cannot be read: expected a file that can be read \(there is no such file\)/u,
    );
  });
});

describe('readText', () => {
  test('readText reads a file whole, across chunks', () => {
    const path = join(folder, 'long.txt');
    const text = 'blues ♭3\n'.repeat(20_000);
    writeFileSync(path, text);
    expect(readText(path)).toBe(text);
  });

  test('readText refuses a file of 50 MB without reading it', () => {
    const path = sparseFile('large.json', 50 * 1024 * 1024);
    expect(() => readText(path)).toThrowError(
      /large\.json" is too large to read: expected at most 16 MB/u,
    );
  });

  test('readBytes reads a file of exactly the largest size', () => {
    expect(readBytes(sparseFile('full.json', LARGEST_FILE)).length).toBe(LARGEST_FILE);
  });

  test('readText refuses a directory and a missing file', () => {
    expect(() => readText(folder)).toThrowError(/it is a directory/u);
    expect(() => readText(join(folder, 'gone.json'))).toThrowError(/there is no such file/u);
  });

  test('readText counts what a device without size gives', () => {
    expect(() => readBytes('/dev/zero')).toThrowError(/at most 16 MB/u);
  });

  test.each([
    ['a PNG picture', '\u0089PNG\r\n\u001a\n'],
    ['a ZIP archive', 'PK\u0003\u0004'],
    ['a file of bytes that are no text', 'G7 \u0000 C7'],
  ])('readText refuses %s by what it is, and readBytes gives its bytes', (kind, content) => {
    const path = join(folder, 'strange');
    writeFileSync(path, Buffer.from(content, 'latin1'));
    expect(() => readText(path)).toThrow(
      expect.objectContaining({
        code: 'FORMAT_UNKNOWN',
        value: kind,
        where: { file: path },
        message: `"${kind}" is not in a known format (file ${path}): expected a file of text`,
      }),
    );
    expect(Buffer.from(readBytes(path)).toString('latin1')).toBe(content);
  });

  test('readText reads an empty file as a text of nothing', () => {
    const path = join(folder, 'empty');
    writeFileSync(path, '');
    expect(readText(path)).toBe('');
  });
});

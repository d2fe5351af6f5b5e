import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { readBytes, readText } from './read-text.js';

/** What calls of readSync meet in turn, before they read: a code of the system; and from where they read. */
const faults = vi.hoisted((): string[] => []);
const input = vi.hoisted(() => ({ bytes: new Uint8Array() }));

vi.mock('node:fs', async (load) => {
  const real = await load<typeof import('node:fs')>();
  return {
    ...real,
    readSync: (file: number, chunk: Uint8Array): number => {
      const code = faults.shift();
      if (code !== undefined) throw Object.assign(new Error(code), { code });
      if (file !== 0) return real.readSync(file, chunk);
      const next = input.bytes.subarray(0, Math.min(3, chunk.length));
      chunk.set(next);
      input.bytes = input.bytes.subarray(next.length);
      return next.length;
    },
  };
});

const folder = mkdtempSync(join(tmpdir(), 'reedplate-'));
const path = join(folder, 'bars.txt');
writeFileSync(path, 'I7 | IV7');
beforeEach(() => {
  faults.length = 0;
  input.bytes = new TextEncoder().encode('I7 | IV7 ♭');
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('reading on in a file', () => {
  test('readText reads standard input for a dash, however little comes at a time', () => {
    expect(readText('-')).toBe('I7 | IV7 ♭');
  });

  test('readText waits for standard input that has nothing yet', () => {
    faults.push('EAGAIN', 'EAGAIN');
    expect(readText('-')).toBe('I7 | IV7 ♭');
    expect(faults).toEqual([]);
  });

  test('readBytes takes the end of a pipe that Windows reports as an error for an end', () => {
    faults.push('EOF');
    expect(readBytes('-').length).toBe(0);
  });

  test.each([
    ['EIO', 'the disk has a fault'],
    ['EISDIR', 'it is a directory'],
    ['EWHATEVER', 'EWHATEVER'],
  ])('readBytes names the file where reading fails with %s', (code, why) => {
    faults.push(code);
    expect(() => readBytes(path)).toThrow(
      expect.objectContaining({
        code: 'FILE_UNREADABLE',
        value: path,
        expected: `a file that can be read (${why})`,
      }),
    );
    expect(readText(path)).toBe('I7 | IV7');
  });
});

import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ReedplateError } from '@reedplate/pitch';
import { afterAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { openSources } from './sources.js';

/** What calls of read meet in turn, before they read: a code of the system; and what standard input holds. */
const faults = vi.hoisted((): string[] => []);
const input = vi.hoisted(() => ({ bytes: new Uint8Array() }));

vi.mock('node:fs', async (load) => {
  const real = await load<typeof import('node:fs')>();
  const { promisify } = await import('node:util');
  const realRead = promisify(real.read);
  const read = async (file: number, buffer: Buffer, offset: number, length: number) => {
    const code = faults.shift();
    if (code !== undefined) throw Object.assign(new Error(code), { code });
    if (file !== 0) return realRead(file, buffer, offset, length, null);
    const next = input.bytes.subarray(0, Math.min(7, length));
    buffer.set(next, offset);
    input.bytes = input.bytes.subarray(next.length);
    return { bytesRead: next.length, buffer };
  };
  return { ...real, read: Object.assign(() => {}, { [promisify.custom]: read }) };
});

const folder = mkdtempSync(join(tmpdir(), 'reedplate-sources-'));
const fileOf = (name: string, text: string): string => {
  writeFileSync(join(folder, name), text, 'latin1');
  return join(folder, name);
};

beforeEach(() => {
  faults.length = 0;
  input.bytes = new Uint8Array();
});
afterAll(() => rmSync(folder, { recursive: true }));

/** The parts of sources: text as it is, errors as their code and value. */
async function partsOf(...paths: readonly string[]): Promise<readonly string[]> {
  const found: string[] = [];
  for await (const part of openSources(paths).parts()) {
    found.push(
      part instanceof ReedplateError ? `${part.code} ${part.value}` : Buffer.from(part).toString(),
    );
  }
  return found;
}

const PNG = '\u0089PNG\r\n\u001a\n\u0000\u0000\u0000\rIHDR';

describe('sources that are no tunes', () => {
  test.each(['picture.png', 'picture.ndjson', 'picture.tab', 'picture'])(
    'openSources says that %s is a picture, and goes on to the next file',
    async (name) => {
      const parts = await partsOf(fileOf(name, PNG), fileOf('next.ndjson', '{}\n'));
      expect(parts).toEqual(['FORMAT_UNKNOWN a PNG picture', '{}\n']);
    },
  );

  test.each(['picture.abc', 'picture.mid', 'picture.musicxml', 'picture.xml'])(
    'openSources says so of %s, which is called as a piece is',
    async (name) => {
      const [first = ''] = await partsOf(fileOf(name, PNG));
      expect(first).toContain('a PNG picture');
    },
  );

  test.runIf(existsSync('/dev/full'))(
    'openSources does not read on in a device that has no end',
    async () => {
      for (const device of ['/dev/full', '/dev/zero']) {
        expect(await partsOf(device)).toEqual(['FORMAT_UNKNOWN a file of bytes that are no text']);
      }
    },
  );

  test('openSources refuses a path through a file, and one that is too long, in words', () => {
    const file = fileOf('tunes.ndjson', '{}\n');
    for (const [path, why] of [
      [join(file, 'tunes.ndjson'), 'there is no such file'],
      [join(folder, 'n'.repeat(300)), 'its name is too long'],
    ] as const) {
      expect(() => openSources([path])).toThrow(
        expect.objectContaining({
          code: 'FILE_UNREADABLE',
          value: path,
          expected: `a file that can be read (${why})`,
        }),
      );
    }
  });
});

describe('reading on', () => {
  test('openSources reads standard input, whose size is not known, as it comes', async () => {
    input.bytes = new TextEncoder().encode('{"a":1}\n{"b":"♭"}');
    const sources = openSources(['-', fileOf('tunes.ndjson', '{}\n')]);
    expect(sources.size).toBe(0);
    let text = '';
    for await (const part of sources.parts()) text += Buffer.from(part as Uint8Array).toString();
    expect(text).toBe('{"a":1}\n{"b":"♭"}\n{}\n');
  });

  test('openSources waits for standard input that has nothing yet, and knows its end', async () => {
    input.bytes = new TextEncoder().encode('{"a":1}\n');
    faults.push('EAGAIN', 'EAGAIN');
    expect((await partsOf('-')).join('')).toBe('{"a":1}\n');
    faults.push('EOF');
    expect(await partsOf('-')).toEqual([]);
  });

  test('openSources names the file in which the disk has a fault', async () => {
    const path = fileOf('tunes.ndjson', '{}\n');
    faults.push('EIO');
    await expect(partsOf(path)).rejects.toThrow(
      expect.objectContaining({
        code: 'FILE_UNREADABLE',
        value: path,
        expected: 'a file that can be read (the disk has a fault)',
      }),
    );
  });
});

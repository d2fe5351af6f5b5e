import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { openOutput } from './output.js';

/** Calls that fail with the code given, as a faulty disk makes them. */
const faults = vi.hoisted(() => new Map<string, string>());

vi.mock('node:fs', async (load) => {
  const real = await load<typeof import('node:fs')>();
  const fail = (name: string): void => {
    const code = faults.get(name);
    if (code !== undefined) throw Object.assign(new Error(code), { code });
  };
  return {
    ...real,
    writeSync: (file: number, bytes: Uint8Array, at = 0): number => {
      // A full disk takes a part before it refuses.
      const written = real.writeSync(file, bytes, at, Math.min(4, bytes.length - at));
      fail('writeSync');
      return written;
    },
    fsyncSync: (file: number): void => {
      fail('fsyncSync');
      real.fsyncSync(file);
    },
  };
});

const folder = mkdtempSync(join(tmpdir(), 'reedplate-output-'));
const unwritable = (path: string, why: string) =>
  expect.objectContaining({
    code: 'FILE_UNWRITABLE',
    value: path,
    expected: `a file that can be written (${why})`,
  });

beforeEach(() => faults.clear());
afterAll(() => rmSync(folder, { recursive: true }));

describe('the results of a study on a faulty disk', () => {
  test('openOutput keeps the whole lines before a disk was full, and none of those after', async () => {
    const path = join(folder, 'full.ndjson');
    const output = openOutput(path, false);
    await output.write('{"number":1}\n');
    faults.set('writeSync', 'ENOSPC');
    await expect(output.write('{"number":2}\n')).rejects.toThrow(
      unwritable(path, 'the disk is full'),
    );
    faults.clear();
    output.close();
    expect(readFileSync(path, 'utf8')).toBe('{"number":1}\n');
  });

  test('openOutput says so where what was written does not come to the disk', async () => {
    const path = join(folder, 'lost.ndjson');
    const output = openOutput(path, false);
    await output.write('{"number":1}\n');
    faults.set('fsyncSync', 'EIO');
    expect(() => output.close()).toThrow(unwritable(path, 'the disk has a fault'));
  });

  test.runIf(existsSync('/dev/full'))(
    'openOutput takes a device for no file that is there, and says that it is full',
    async () => {
      const output = openOutput('/dev/full', false);
      await expect(output.write('{"number":1}\n')).rejects.toThrow(
        unwritable('/dev/full', 'the disk is full'),
      );
      output.close();
    },
  );

  test('openOutput refuses a directory, and a path through a file, in words', () => {
    const file = join(folder, 'there.ndjson');
    writeFileSync(file, '');
    const through = join(file, 'results.ndjson');
    for (const resume of [true, false]) {
      expect(() => openOutput(folder, resume)).toThrow(unwritable(folder, 'it is a directory'));
      expect(() => openOutput(through, resume)).toThrow(
        unwritable(through, 'its folder is not there'),
      );
    }
  });

  test('openOutput writes results to standard output, and tells when it cannot', async () => {
    const written: unknown[] = [];
    const write = vi.spyOn(process.stdout, 'write');
    write.mockImplementationOnce(((lines: unknown, done: (error?: Error) => void) => {
      written.push(lines);
      done();
      return true;
    }) as typeof process.stdout.write);
    write.mockImplementationOnce(((_: unknown, done: (error?: Error) => void) => {
      done(Object.assign(new Error('ENOSPC'), { code: 'ENOSPC' }));
      return false;
    }) as typeof process.stdout.write);
    const output = openOutput(undefined, false);
    await output.write('{"number":1}\n');
    await expect(output.write('{"number":2}\n')).rejects.toThrow('ENOSPC');
    output.close();
    write.mockRestore();
    expect(written).toEqual(['{"number":1}\n']);
  });
});

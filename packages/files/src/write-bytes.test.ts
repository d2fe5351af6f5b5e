import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test, vi } from 'vitest';
import { writeBytes } from './write-bytes.js';

const folder = mkdtempSync(join(tmpdir(), 'reedplate-'));
afterAll(() => rmSync(folder, { recursive: true }));

describe('writeBytes', () => {
  test('writeBytes writes a file, over one that is there', () => {
    const path = join(folder, 'out.mid');
    writeBytes(path, Uint8Array.of(1, 2, 3));
    writeBytes(path, Uint8Array.of(0, 255));
    expect([...readFileSync(path)]).toEqual([0, 255]);
  });

  test('writeBytes writes standard output for a dash', () => {
    const write = vi.spyOn(process.stdout, 'write').mockReturnValue(true);
    const bytes = Uint8Array.of(1);
    writeBytes('-', bytes);
    expect(write.mock.calls).toEqual([[bytes]]);
    write.mockRestore();
  });

  test.each([
    ['a folder that is not there', join(folder, 'no', 'out.mid'), /its folder is not there/u],
    ['a folder that is a file', join(folder, 'out.mid', 'out.mid'), /its folder is not there/u],
    ['a directory', folder, /it is a directory/u],
    ['no name', '', /its folder is not there/u],
  ])('writeBytes refuses %s', (_, path, message) => {
    expect(() => writeBytes(path, new Uint8Array())).toThrowError(message);
  });
});

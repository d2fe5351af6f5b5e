import {
  chmodSync,
  closeSync,
  lstatSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { writeBytes } from './write-bytes.js';
import { writeAll, writeWhole } from './write-whole.js';

/** Calls that fail with the code given, as a faulty disk makes them. */
const faults = vi.hoisted(() => new Map<string, string>());
/** Bytes that a call of writeSync takes at most. */
const share = vi.hoisted(() => ({ most: Number.POSITIVE_INFINITY }));

vi.mock('node:fs', async (load) => {
  const real = await load<typeof import('node:fs')>();
  const faulty = (name: 'openSync' | 'fsyncSync' | 'renameSync' | 'fchownSync') => {
    const act = real[name] as (...given: readonly unknown[]) => unknown;
    return (...given: readonly unknown[]): unknown => {
      const code = faults.get(name);
      if (code !== undefined) throw Object.assign(new Error(code), { code });
      return act(...given);
    };
  };
  return {
    ...real,
    openSync: faulty('openSync'),
    fsyncSync: faulty('fsyncSync'),
    renameSync: faulty('renameSync'),
    fchownSync: faulty('fchownSync'),
    writeSync: (file: number, bytes: Uint8Array, at = 0): number => {
      const written = real.writeSync(file, bytes, at, Math.min(bytes.length - at, share.most));
      const code = faults.get('writeSync');
      // A full disk takes a part before it refuses.
      if (code !== undefined) throw Object.assign(new Error(code), { code });
      return written;
    },
  };
});

const folder = mkdtempSync(join(tmpdir(), 'reedplate-'));
const target = join(folder, 'out.mid');
const text = (path: string): string => readFileSync(path, 'utf8');
const bytes = (written: string): Uint8Array => new TextEncoder().encode(written);

beforeEach(() => {
  faults.clear();
  share.most = Number.POSITIVE_INFINITY;
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('writeWhole', () => {
  const calls = ['openSync', 'writeSync', 'fsyncSync', 'renameSync'];
  const codes = ['ENOSPC', 'EACCES', 'EIO'];
  test.each(calls.flatMap((call) => codes.map((code) => [call, code])))(
    'writeWhole keeps the old file and nothing else where %s fails with %s',
    (call, code) => {
      writeFileSync(target, 'old');
      share.most = 2;
      faults.set(call, code);
      expect(() => writeBytes(target, bytes('new and longer'))).toThrowError(
        expect.objectContaining({ code: 'FILE_UNWRITABLE', value: target }),
      );
      faults.clear();
      expect(text(target)).toBe('old');
      expect(readdirSync(folder)).toEqual(['out.mid']);
    },
  );

  test.each(calls)('writeWhole leaves no new file where %s fails', (call) => {
    rmSync(target, { force: true });
    faults.set(call, 'ENOSPC');
    expect(() => writeBytes(target, bytes('new'))).toThrowError(/the disk is full/u);
    faults.clear();
    expect(readdirSync(folder)).toEqual([]);
  });

  test('writeWhole writes on where the system takes a few bytes at a time', () => {
    share.most = 3;
    writeWhole(target, bytes('twelve bars of blues'));
    expect(text(target)).toBe('twelve bars of blues');
  });

  test('writeWhole keeps who may read a file, and a link to it', () => {
    const link = join(folder, 'link');
    writeFileSync(target, 'old');
    chmodSync(target, 0o640);
    symlinkSync(target, link);
    writeWhole(link, bytes('new'));
    expect([text(target), statSync(target).mode & 0o777]).toEqual(['new', 0o640]);
    expect(lstatSync(link).isSymbolicLink()).toBe(true);
    rmSync(link);
  });

  test('writeWhole writes where files cannot be given to their owner', () => {
    writeFileSync(target, 'old');
    faults.set('fchownSync', 'EPERM');
    writeWhole(target, bytes('new'));
    expect(text(target)).toBe('new');
  });

  test('writeWhole writes a device as it is', () => {
    expect(() => writeWhole('/dev/null', bytes('gone'))).not.toThrow();
    expect(statSync('/dev/null').isCharacterDevice()).toBe(true);
  });
});

describe('writeAll', () => {
  test('writeAll writes every byte to an open file', () => {
    const file = openSync(target, 'w');
    share.most = 1;
    writeAll(file, bytes('draw'));
    closeSync(file);
    expect(text(target)).toBe('draw');
  });
});

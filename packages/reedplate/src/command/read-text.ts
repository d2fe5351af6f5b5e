import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import { ReedplateError } from '@reedplate/pitch';

/** Largest file read, in bytes: a take of 100,000 notes has room; what is larger is a mistake. */
export const LARGEST_FILE = 16 * 1024 * 1024;

const STANDARD_INPUT = 0;
const CHUNK = 64 * 1024;

/**
 * Reads a text file whole, or standard input for `-`; never more than {@link LARGEST_FILE}.
 *
 * @throws ReedplateError as {@link readBytes}
 */
export function readText(path: string): string {
  return new TextDecoder().decode(readBytes(path));
}

/**
 * Reads a file whole, or standard input for `-`; never more than {@link LARGEST_FILE}.
 *
 * @throws ReedplateError `FILE_UNREADABLE` for what is missing, a directory, or closed to us;
 *   `FILE_TOO_LARGE`
 */
export function readBytes(path: string): Uint8Array {
  const file = path === '-' ? STANDARD_INPUT : open(path);
  try {
    if (file !== STANDARD_INPUT) requireFile(file, path);
    return readBounded(file, path);
  } finally {
    if (file !== STANDARD_INPUT) closeSync(file);
  }
}

function open(path: string): number {
  try {
    return openSync(path, 'r');
  } catch (error) {
    throw unreadable(path, systemReason(error));
  }
}

function requireFile(file: number, path: string): void {
  const stats = fstatSync(file);
  if (stats.isDirectory()) throw unreadable(path, 'it is a directory');
  if (stats.size > LARGEST_FILE) throw tooLarge(path);
}

/** Counts what really comes, since a pipe or a device does not say its size. */
function readBounded(file: number, path: string): Uint8Array {
  const chunks: Buffer[] = [];
  let total = 0;
  for (;;) {
    const chunk = Buffer.alloc(CHUNK);
    const length = readChunk(file, chunk, path);
    if (length === 0) return Buffer.concat(chunks);
    total += length;
    if (total > LARGEST_FILE) throw tooLarge(path);
    chunks.push(chunk.subarray(0, length));
  }
}

function readChunk(file: number, chunk: Buffer, path: string): number {
  try {
    return readSync(file, chunk);
  } catch (error) {
    const reason = systemReason(error);
    if (reason === 'EOF') return 0;
    throw unreadable(path, reason);
  }
}

function systemReason(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  if (code === 'ENOENT') return 'there is no such file';
  if (code === 'EACCES') return 'permission is denied';
  return code === '' ? 'it cannot be opened' : code;
}

function unreadable(path: string, reason: string): ReedplateError {
  return new ReedplateError({
    code: 'FILE_UNREADABLE',
    value: path,
    expected: `a file that can be read (${reason})`,
  });
}

function tooLarge(path: string): ReedplateError {
  const megabytes = LARGEST_FILE / 1024 / 1024;
  return new ReedplateError({
    code: 'FILE_TOO_LARGE',
    value: path,
    expected: `at most ${megabytes} MB`,
  });
}

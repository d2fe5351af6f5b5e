import { closeSync, fstatSync, readSync } from 'node:fs';
import { ReedplateError } from '@reedplate/pitch';
import { openFile, systemReason, unreadable } from './open-file.js';

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
  const file = path === '-' ? STANDARD_INPUT : openFile(path);
  try {
    if (file !== STANDARD_INPUT && fstatSync(file).size > LARGEST_FILE) throw tooLarge(path);
    return readBounded(file, path);
  } finally {
    if (file !== STANDARD_INPUT) closeSync(file);
  }
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

function tooLarge(path: string): ReedplateError {
  const megabytes = LARGEST_FILE / 1024 / 1024;
  return new ReedplateError({
    code: 'FILE_TOO_LARGE',
    value: path,
    expected: `at most ${megabytes} MB`,
  });
}

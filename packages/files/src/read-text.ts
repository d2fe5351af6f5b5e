import { closeSync, fstatSync, readSync } from 'node:fs';
import { kindOfFile, ReedplateError } from '@reedplate/pitch';
import { openFile, systemCode, systemReason, unreadable } from './open-file.js';

/** Largest file read, in bytes: a take of 100,000 notes has room; what is larger is a mistake. */
export const LARGEST_FILE = 16 * 1024 * 1024;

const STANDARD_INPUT = 0;
const CHUNK = 64 * 1024;
/** Milliseconds until standard input is asked again that had nothing to give yet. */
const PATIENCE = 5;

/**
 * Reads a text file whole, or standard input for `-`; never more than {@link LARGEST_FILE}.
 *
 * @throws ReedplateError as {@link readBytes}; `FORMAT_UNKNOWN` for a picture, a sound or the like
 */
export function readText(path: string): string {
  const bytes = readBytes(path);
  requireText(bytes, path);
  return new TextDecoder().decode(bytes);
}

/**
 * Refuses a file that begins as no text does, by what kind of file it is. An empty one is text.
 *
 * @throws ReedplateError `FORMAT_UNKNOWN`
 */
export function requireText(begin: Uint8Array, path: string): void {
  const kind = begin.length === 0 ? undefined : kindOfFile(begin);
  if (kind === undefined) return;
  throw new ReedplateError({
    code: 'FORMAT_UNKNOWN',
    value: kind,
    expected: 'a file of text',
    where: { file: path },
  });
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

/**
 * Reads the next bytes of an open file into a chunk, and waits where standard input has none yet.
 *
 * @returns how many; 0 at the end
 * @throws ReedplateError `FILE_UNREADABLE`
 */
export function readChunk(file: number, chunk: Uint8Array, path: string): number {
  for (;;) {
    try {
      return readSync(file, chunk);
    } catch (error) {
      const code = systemCode(error);
      // So a closed pipe ends on Windows.
      if (code === 'EOF') return 0;
      if (code !== 'EAGAIN') throw unreadable(path, systemReason(error));
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, PATIENCE);
    }
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

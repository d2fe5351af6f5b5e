import { createHash } from 'node:crypto';
import { closeSync, statSync } from 'node:fs';
import { basename } from 'node:path';
import { openFile, readChunk } from '@reedplate/files';
import type { StudyInput } from '../manifest.js';

const CHUNK = 256 * 1024;

/**
 * Says of each file of a study's input what is in it. What is no plain file can be read but once, and is left
 * to the study.
 *
 * @throws ReedplateError `FILE_UNREADABLE`
 */
export function hashInput(paths: readonly string[]): readonly StudyInput[] {
  return paths.map((path) => {
    if (path === '-' || !statSync(path).isFile()) {
      return { file: path === '-' ? path : basename(path), bytes: null, sha256: null };
    }
    return { file: basename(path), ...hashFile(path) };
  });
}

function hashFile(path: string): Pick<StudyInput, 'bytes' | 'sha256'> {
  const file = openFile(path);
  const hash = createHash('sha256');
  const chunk = Buffer.alloc(CHUNK);
  let bytes = 0;
  try {
    for (let length = readChunk(file, chunk, path); length > 0; ) {
      hash.update(chunk.subarray(0, length));
      bytes += length;
      length = readChunk(file, chunk, path);
    }
  } finally {
    closeSync(file);
  }
  return { bytes, sha256: hash.digest('hex') };
}

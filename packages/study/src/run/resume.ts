import { closeSync, fstatSync, ftruncateSync, openSync, readSync } from 'node:fs';
import { unwritable } from '@reedplate/files';
import { ReedplateError } from '@reedplate/pitch';
import { readResults } from './read-results.js';

const CHUNK = 64 * 1024;
const LINE_END = 10;

/** How far a file of results goes. */
export interface StudyDone {
  /** Number of the last tune that is done; 0 where none is. */
  readonly number: number;
  readonly tunes: number;
  readonly failures: number;
  /** Bytes of a line that was not written to its end, which were cut off. */
  readonly cut: number;
}

/**
 * How far a file of results goes, after cutting a line off that was not written to its end. Every line is read:
 * a file that is refused stays as it is.
 *
 * @throws ReedplateError `STUDY_INVALID` for a file that holds no results, those of another setup, or numbers out
 *   of order; `FILE_UNWRITABLE`
 */
export function resultsDone(path: string, digest: string): StudyDone {
  const file = openToCut(path);
  try {
    const { size } = fstatSync(file);
    const end = lastLineEnd(file, size);
    if (!isBegun(readText(file, end, Math.min(size, end + BEGINNING.length)))) throw refused(path);
    const done = countDone(path, end, digest);
    ftruncateSync(file, end);
    return { ...done, cut: size - end };
  } finally {
    closeSync(file);
  }
}

function countDone(path: string, end: number, digest: string): Omit<StudyDone, 'cut'> {
  const done = { number: 0, tunes: 0, failures: 0 };
  for (const result of readResults(path, { bytes: end })) {
    if (result.digest !== digest || result.number <= done.number) throw refused(path);
    done.number = result.number;
    done.tunes += 1;
    if ('error' in result) done.failures += 1;
  }
  return done;
}

function openToCut(path: string): number {
  try {
    return openSync(path, 'r+');
  } catch (error) {
    throw unwritable(path, error);
  }
}

/** How every result begins. */
const BEGINNING = '{"number":';

/** Whether text may be a result that was not written to its end. */
const isBegun = (text: string): boolean => BEGINNING.startsWith(text);

/** Offset after the last line end before `size`; 0 where there is none. */
function lastLineEnd(file: number, size: number): number {
  for (let end = size; end > 0; end = Math.max(0, end - CHUNK)) {
    const begin = Math.max(0, end - CHUNK);
    const chunk = Buffer.alloc(end - begin);
    readSync(file, chunk, 0, chunk.length, begin);
    const found = chunk.lastIndexOf(LINE_END);
    if (found >= 0) return begin + found + 1;
  }
  return 0;
}

function readText(file: number, begin: number, end: number): string {
  const buffer = Buffer.alloc(end - begin);
  readSync(file, buffer, 0, buffer.length, begin);
  return buffer.toString('utf8');
}

function refused(path: string): ReedplateError {
  return new ReedplateError({
    code: 'STUDY_INVALID',
    value: path,
    expected: 'results of the same study, to resume it',
    where: { file: path },
  });
}

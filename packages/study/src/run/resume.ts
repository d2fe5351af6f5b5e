import {
  closeSync,
  existsSync,
  fstatSync,
  ftruncateSync,
  openSync,
  readSync,
  statSync,
} from 'node:fs';
import { unwritable } from '@reedplate/files';
import { toPlayer } from '@reedplate/layout';
import { ReedplateError } from '@reedplate/pitch';
import type { StudyResult } from '../study.js';
import type { StudySetup } from '../study-setup.js';

const CHUNK = 64 * 1024;
const LINE_END = 10;

/**
 * How many lines of input a file of results has done, after cutting a line off that was not
 * written to its end. 0 where there is no file yet, and for a device. A file that is refused stays as it is.
 *
 * @throws ReedplateError `STUDY_INVALID` for a file that holds no results, or those of another setup;
 *   `FILE_UNWRITABLE`
 */
export function linesDone(path: string, setup: StudySetup): number {
  if (!existsSync(path) || !statSync(path).isFile()) return 0;
  const file = openToCut(path);
  try {
    const { size } = fstatSync(file);
    const end = lastLineEnd(file, size);
    if (!isBegun(readText(file, end, Math.min(size, end + BEGINNING.length)))) throw refused(path);
    const done = numberDone(file, end, path, setup);
    ftruncateSync(file, end);
    return done;
  } finally {
    closeSync(file);
  }
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

/**
 * Number of the last of the whole lines before `end`; 0 where there is none. A tune that could not
 * be read has no cells and tells nothing of the setup, so the last that has some is looked for.
 */
function numberDone(file: number, end: number, path: string, setup: StudySetup): number {
  let number = 0;
  for (let to = end; to > 0; ) {
    const from = lastLineEnd(file, to - 1);
    const result = parse(readText(file, from, to));
    if (typeof result?.number !== 'number') throw refused(path);
    number ||= result.number;
    if (result.cells !== undefined) {
      if (!isOfSetup(result, setup)) throw refused(path);
      return number;
    }
    to = from;
  }
  return number;
}

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

function parse(text: string): Partial<StudyResult> | undefined {
  try {
    return JSON.parse(text) as Partial<StudyResult>;
  } catch {
    return undefined;
  }
}

/** A result does not say which octaves were asked for, but none of its own may lie outside them. */
function isOfSetup({ cells = [], model }: Partial<StudyResult>, setup: StudySetup): boolean {
  const expected = setup.tunings.flatMap(({ id }) =>
    setup.positions.flatMap((position) =>
      setup.levels.map((level) => `${id} ${position} ${toPlayer(level).id}`),
    ),
  );
  const found = cells.map(({ tuning, position, level }) => `${tuning} ${position} ${level}`);
  const isAsked = cells.every(({ octave }) => setup.octaves.includes(octave));
  return model === setup.model.id && isAsked && found.join() === expected.join();
}

import { closeSync, existsSync, fstatSync, ftruncateSync, openSync, readSync } from 'node:fs';
import { ReedplateError } from '@reedplate/pitch';
import type { StudyResult, StudySetup } from '@reedplate/playability';

const CHUNK = 64 * 1024;
const LINE_END = 10;

/**
 * How many lines of input a file of results has done, after cutting a line off that was not
 * written to its end. 0 where there is no file yet.
 *
 * @throws ReedplateError `STUDY_INVALID` for a file that holds no results, or those of another setup
 */
export function linesDone(path: string, setup: StudySetup): number {
  if (!existsSync(path)) return 0;
  const file = openSync(path, 'r+');
  try {
    const end = lastLineEnd(file, fstatSync(file).size);
    ftruncateSync(file, end);
    if (end === 0) return 0;
    const before = lastLineEnd(file, end - 1);
    return numberOf(readText(file, before, end), path, setup);
  } finally {
    closeSync(file);
  }
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

function numberOf(text: string, path: string, setup: StudySetup): number {
  const result = parse(text);
  if (typeof result?.number !== 'number' || !isOfSetup(result, setup)) {
    throw new ReedplateError({
      code: 'STUDY_INVALID',
      value: path,
      expected: 'results of the same study, to resume it',
      where: { file: path },
    });
  }
  return result.number;
}

function parse(text: string): Partial<StudyResult> | undefined {
  try {
    return JSON.parse(text) as Partial<StudyResult>;
  } catch {
    return undefined;
  }
}

function isOfSetup({ cells, model }: Partial<StudyResult>, setup: StudySetup): boolean {
  // A tune that could not be read has no cells, and tells nothing of the setup.
  if (cells === undefined) return true;
  const expected = setup.tunings.flatMap(({ id }) =>
    setup.positions.flatMap((position) =>
      setup.levels.map((level) => `${id} ${position} ${level}`),
    ),
  );
  const found = cells.map(({ tuning, position, level }) => `${tuning} ${position} ${level}`);
  return model === setup.model.id && found.join() === expected.join();
}

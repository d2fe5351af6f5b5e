import { closeSync } from 'node:fs';
import { StringDecoder } from 'node:string_decoder';
import { openFile, readChunk, requireText } from '@reedplate/files';
import { type OptionNames, ReedplateError, requireOptions } from '@reedplate/pitch';
import type { StudyFailure, StudyResult } from '../study.js';
import { LONGEST_LINE, tooLong } from './whole-lines.js';

const CHUNK = 256 * 1024;

/** How {@link readResults} reads. */
export interface ReadResultsOptions {
  /** How many bytes of the file are read; default all. */
  readonly bytes?: number;
}

const READ_OPTIONS: OptionNames<ReadResultsOptions> = { bytes: true };

/**
 * The results of a study from a file of them, `-` for standard input, one at a time.
 *
 * @throws ReedplateError `FILE_UNREADABLE`; `FORMAT_UNKNOWN` for a picture, a sound or the like;
 *   `FILE_TOO_LARGE` for a line of more than 16 MB; `STUDY_INVALID` for a line that is no result, with
 *   `where.file` and `where.line`
 */
export function* readResults(
  path: string,
  options: ReadResultsOptions = {},
): Generator<StudyResult | StudyFailure> {
  const { bytes = Number.MAX_SAFE_INTEGER } = requireOptions(options, READ_OPTIONS, 'readResults');
  let line = 0;
  for (const text of linesOf(path, bytes)) {
    line += 1;
    if (text.trim() !== '') yield readResult(text, path, line);
  }
}

function* linesOf(path: string, bytes: number): Generator<string> {
  const file = path === '-' ? 0 : openFile(path);
  const decoder = new StringDecoder('utf8');
  const chunk = Buffer.alloc(CHUNK);
  let begun = '';
  let left = bytes;
  const readOn = (): number => {
    const length = Math.min(left, readChunk(file, chunk, path));
    left -= length;
    return length;
  };
  try {
    let length = readOn();
    requireText(chunk.subarray(0, length), path);
    for (; length > 0; length = readOn()) {
      const [first = '', ...rest] = decoder.write(chunk.subarray(0, length)).split('\n');
      begun += first;
      if (begun.length > LONGEST_LINE) throw tooLong(LONGEST_LINE);
      for (const next of rest) {
        yield begun;
        begun = next;
      }
    }
    yield begun + decoder.end();
  } finally {
    if (file !== 0) closeSync(file);
  }
}

function readResult(text: string, file: string, line: number): StudyResult | StudyFailure {
  const value = parse(text);
  if (isFailure(value) || isResult(value)) return value;
  throw new ReedplateError({
    code: 'STUDY_INVALID',
    value: text.slice(0, 60),
    expected: 'a result of reedplate study',
    where: { file, line },
  });
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

type Fields = Readonly<Record<string, unknown>>;

const isObject = (value: unknown): value is Fields => typeof value === 'object' && value !== null;

function isFailure(value: unknown): value is StudyFailure {
  return isObject(value) && isHeaded(value) && isObject(value.error);
}

function isResult(value: unknown): value is StudyResult {
  if (!isObject(value) || !Array.isArray(value.cells)) return false;
  const { events, model } = value;
  const isNamed = isHeaded(value) && typeof model === 'string' && isObject(value.tempo);
  return isNamed && typeof events === 'number' && events > 0 && value.cells.every(isCell);
}

const isHeaded = ({ number, digest }: Fields): boolean =>
  Number.isInteger(number) && typeof digest === 'string';

const FIGURES = ['position', 'playableShare', 'effortPerEvent', 'bends', 'overbends'] as const;

function isCell(cell: unknown): boolean {
  if (!isObject(cell) || typeof cell.tuning !== 'string' || typeof cell.level !== 'string') {
    return false;
  }
  return FIGURES.every((name) => typeof cell[name] === 'number');
}

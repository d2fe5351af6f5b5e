import { closeSync, read as readFile, type Stats, statSync } from 'node:fs';
import { basename } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { promisify } from 'node:util';
import {
  openFile,
  readBytes,
  readChunk,
  readInFile,
  requireText,
  systemCode,
  systemReason,
  unreadable,
} from '@reedplate/files';
import type { Piece } from '@reedplate/interchange';
import {
  isReedplateError,
  type KeyName,
  type OptionNames,
  type ReedplateError,
  readJson,
  requireOptions,
} from '@reedplate/pitch';
import { type InputPart, type ReadInto, wholeLines } from './whole-lines.js';

/** Where a study reads from: several files, one after the other, as one input. */
export interface StudySources {
  /** Bytes in all; 0 where they are not known. */
  readonly size: number;
  /** How many bytes have been read so far. */
  readonly bytesRead: () => number;
  /** The input in turn: whole lines of text, or why a file is left out. */
  readonly parts: () => AsyncGenerator<Uint8Array | ReedplateError>;
}

/** How pieces of other formats become tunes. */
export interface SourceOptions {
  /** Key of a piece that gives none. */
  readonly key?: KeyName | undefined;
  /** Which part of MIDI and MusicXML files is the tune: its number from 1, or its name; default the one most like a tune. */
  readonly part?: number | string | undefined;
}

const SOURCE_OPTIONS: OptionNames<SourceOptions> = { key: true, part: true };

/** Files that hold whole pieces, and are no lines of text, by their names. */
const PIECES = /\.(?:abc|midi?|musicxml|mxl|xml)$/iu;
const STANDARD_INPUT = '-';

/**
 * Opens the input of a study: files of tunes a line, standard input for `-`, and pieces in MIDI,
 * MusicXML and ABC by their names.
 *
 * @throws ReedplateError `FILE_UNREADABLE`, before anything is read, with the first file that is not there
 */
export function openSources(paths: readonly string[], options: SourceOptions = {}): StudySources {
  requireOptions(options, SOURCE_OPTIONS, 'openSources');
  const sizes = paths.map(sizeOf);
  let done = 0;
  return {
    size: sizes.includes(0) ? 0 : sizes.reduce((sum, size) => sum + size, 0),
    bytesRead: () => done,
    parts: async function* () {
      for (const path of paths) {
        if (PIECES.test(path) || isWholeJson(path)) {
          yield* piecesOf(path, options);
          done += sizeOf(path);
          continue;
        }
        for await (const part of linesOf(path)) {
          yield part;
          if (part instanceof Uint8Array) done += part.length;
        }
      }
    },
  };
}

function sizeOf(path: string): number {
  if (path === STANDARD_INPUT) return 0;
  const stats = lookAt(path);
  if (stats.isDirectory()) throw unreadable(path, 'it is a directory');
  // A pipe or a device has no size, but can be read.
  return stats.isFile() ? stats.size : 0;
}

function lookAt(path: string): Stats {
  try {
    return statSync(path);
  } catch (error) {
    throw unreadable(path, systemReason(error));
  }
}

const BYTE_ORDER_MARK = Buffer.from([0xef, 0xbb, 0xbf]);

/** The lines of a text file, without a byte order mark; or why it is left out, where it is no text. */
async function* linesOf(path: string): AsyncGenerator<InputPart> {
  const file = path === STANDARD_INPUT ? 0 : openFile(path);
  let isFirst = true;
  try {
    for await (const part of wholeLines(readerOf(file, path))) {
      const mark = BYTE_ORDER_MARK.length;
      const isMarked =
        isFirst && part instanceof Buffer && part.subarray(0, mark).equals(BYTE_ORDER_MARK);
      isFirst = false;
      yield isMarked ? part.subarray(mark) : part;
    }
  } catch (error) {
    if (!isReedplateError(error) || error.code !== 'FORMAT_UNKNOWN') throw error;
    yield error;
  } finally {
    if (file !== 0) closeSync(file);
  }
}

const read = promisify(readFile);
/** Milliseconds until standard input is asked again that had nothing to give yet. */
const PATIENCE = 5;

/** Reads on in a file. One without the end of a line, as a picture or a device may be, is known by its beginning. */
function readerOf(file: number, path: string): ReadInto {
  let isBegun = false;
  return async function readInto(buffer, offset): Promise<number> {
    try {
      const { bytesRead } = await read(file, buffer, offset, buffer.length - offset, null);
      if (!isBegun) requireText(buffer.subarray(offset, offset + bytesRead), path);
      isBegun = true;
      return bytesRead;
    } catch (error) {
      if (isReedplateError(error)) throw error;
      const code = systemCode(error);
      // So a closed pipe ends on Windows.
      if (code === 'EOF') return 0;
      if (code !== 'EAGAIN') throw unreadable(path, systemReason(error));
    }
    await wait(PATIENCE);
    return readInto(buffer, offset);
  };
}

const PEEK = 64 * 1024;

/** Whether a file is one JSON value over several lines, as programs and editors save it, and no lines of tunes. */
function isWholeJson(path: string): boolean {
  if (!/\.json$/iu.test(path) || !lookAt(path).isFile()) return false;
  const file = openFile(path);
  try {
    const chunk = Buffer.alloc(PEEK);
    const text = chunk.toString('utf8', 0, readChunk(file, chunk, path)).replace(/^\uFEFF/u, '');
    const [first = '', ...rest] = text.trimStart().split('\n');
    return rest.length > 0 && !isJson(first);
  } finally {
    closeSync(file);
  }
}

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

/** A tune, or a list of them, from JSON over several lines; `undefined` where it is a line or a piece. */
function tunesIn(text: string): readonly unknown[] | undefined {
  const value = readJson(text.replace(/^\uFEFF/u, ''));
  if (Array.isArray(value)) return value;
  return typeof value === 'object' && value !== null && 'line' in value ? [value] : undefined;
}

/** The pieces of a file as tunes, a line each, called after the file; or why it cannot be read. */
async function* piecesOf(path: string, { key, part }: SourceOptions): AsyncGenerator<InputPart> {
  // Only files that are no lines need the readers of other formats.
  const { readAbc, readPiece } = await import('@reedplate/interchange');
  const asked = part === undefined ? {} : { part };
  const name = basename(path);
  try {
    const bytes = readBytes(path);
    const tunes = /\.json$/iu.test(path)
      ? readInFile(path, () => tunesIn(Buffer.from(bytes).toString('utf8')))
      : undefined;
    if (tunes !== undefined) {
      yield Buffer.from(tunes.map((tune) => `${JSON.stringify(tune)}\n`).join(''));
      return;
    }
    const pieces = readInFile(path, () =>
      /\.abc$/iu.test(path) ? readAbc(bytes, asked) : [readPiece(bytes, asked)],
    );
    const lines = pieces.map((piece, at) =>
      lineOf(piece, pieces.length === 1 ? name : `${name}:${at + 1}`, key),
    );
    yield Buffer.from(lines.join(''));
  } catch (error) {
    if (!isReedplateError(error)) throw error;
    yield error;
  }
}

/** A piece without a key or a note is left for the study to report. */
function lineOf({ key, line }: Piece, id: string, otherwise: KeyName | undefined): string {
  return `${JSON.stringify({ id, key: key ?? otherwise, line })}\n`;
}

import {
  closeSync,
  existsSync,
  fstatSync,
  fsyncSync,
  ftruncateSync,
  openSync,
  statSync,
} from 'node:fs';
import { unwritable, writeAll } from '@reedplate/files';
import { ReedplateError } from '@reedplate/pitch';

/** Where the results of a study go. */
export interface StudyOutput {
  /** Resolves when all is written; rejects where it cannot be. */
  readonly write: (lines: Uint8Array | string) => Promise<void>;
  readonly close: () => void;
}

/**
 * Opens the output of a study: a file that results are added to, whole lines at a time, or standard
 * output.
 *
 * @throws ReedplateError `USAGE` where the file is there and is not to be resumed;
 *   `FILE_UNWRITABLE`
 */
export function openOutput(path: string | undefined, resume: boolean): StudyOutput {
  if (path === undefined) return { write: writeToStandardOutput, close: () => {} };
  if (!resume && existsSync(path) && statSync(path).isFile()) {
    throw new ReedplateError({
      code: 'USAGE',
      value: path,
      expected: 'a file that is not there yet, or --resume',
    });
  }
  const file = openToAdd(path);
  return {
    write: async (lines) => addWhole(file, path, lines),
    close: () => closeWritten(file, path),
  };
}

function openToAdd(path: string): number {
  try {
    return openSync(path, 'a');
  } catch (error) {
    throw unwritable(path, error);
  }
}

/** Adds lines; where they do not all go in, none of them stays, and the results before are whole. */
function addWhole(file: number, path: string, lines: Uint8Array | string): void {
  const { size } = fstatSync(file);
  try {
    writeAll(file, typeof lines === 'string' ? Buffer.from(lines) : lines);
  } catch (error) {
    cutBack(file, size);
    throw unwritable(path, error);
  }
}

/** A device has no end to cut. */
function cutBack(file: number, size: number): void {
  if (fstatSync(file).isFile()) ftruncateSync(file, size);
}

function closeWritten(file: number, path: string): void {
  try {
    if (fstatSync(file).isFile()) fsyncSync(file);
  } catch (error) {
    throw unwritable(path, error);
  } finally {
    closeSync(file);
  }
}

function writeToStandardOutput(lines: Uint8Array | string): Promise<void> {
  return new Promise((resolve, reject) => {
    process.stdout.write(lines, (error) => (error ? reject(error) : resolve()));
  });
}

/** Whether an error says only that the reader, such as `head`, has gone away. */
export function isReaderGone(error: unknown): boolean {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  return code === 'EPIPE' || code === 'ERR_STREAM_DESTROYED';
}

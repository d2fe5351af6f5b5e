import { closeSync, existsSync, openSync, writeSync } from 'node:fs';
import { ReedplateError } from '@reedplate/pitch';

/** Where the results of a study go. */
export interface StudyOutput {
  /** Resolves when all is written; rejects where it cannot be. */
  readonly write: (lines: Uint8Array | string) => Promise<void>;
  readonly close: () => void;
}

/**
 * Opens the output of a study: a file that results are added to, or standard output.
 *
 * @throws ReedplateError `USAGE` where the file is there and is not to be resumed;
 *   `FILE_UNWRITABLE`
 */
export function openOutput(path: string | undefined, resume: boolean): StudyOutput {
  if (path === undefined) return { write: writeToStandardOutput, close: () => {} };
  if (existsSync(path) && !resume) {
    throw new ReedplateError({
      code: 'USAGE',
      value: path,
      expected: 'a file that is not there yet, or --resume',
    });
  }
  const file = openToAdd(path);
  return { write: async (lines) => writeWhole(file, lines), close: () => closeSync(file) };
}

function openToAdd(path: string): number {
  try {
    return openSync(path, 'a');
  } catch (error) {
    throw unwritable(path, error);
  }
}

function unwritable(path: string, error: unknown): ReedplateError {
  const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown';
  const reason = code === 'ENOENT' ? 'its folder is not there' : code;
  return new ReedplateError({
    code: 'FILE_UNWRITABLE',
    value: path,
    expected: `a file that can be written (${reason})`,
  });
}

function writeWhole(file: number, lines: Uint8Array | string): void {
  const bytes = typeof lines === 'string' ? Buffer.from(lines) : lines;
  for (let at = 0; at < bytes.length; ) at += writeSync(file, bytes, at);
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

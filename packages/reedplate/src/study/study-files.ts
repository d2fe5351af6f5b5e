import { once } from 'node:events';
import { createReadStream, createWriteStream, existsSync, readFileSync, statSync } from 'node:fs';
import { Readable, type Writable } from 'node:stream';
import { readAbc } from '@reedplate/interchange';
import { ReedplateError } from '@reedplate/pitch';

/** Where a study reads from. */
export interface StudyInput {
  readonly stream: Readable;
  /** Bytes in all; 0 where they are not known. */
  readonly size: number;
  readonly bytesRead: () => number;
}

/**
 * Opens the input of a study: a file of tunes a line, a tune book in ABC by its name, or standard
 * input for `-`.
 *
 * @throws ReedplateError `FILE_UNREADABLE`; what `readAbc` throws
 */
export async function openInput(path: string): Promise<StudyInput> {
  if (path === '-') return { stream: process.stdin, size: 0, bytesRead: () => 0 };
  const stats = statSync(path, { throwIfNoEntry: false });
  if (!stats?.isFile()) throw unreadable(path, 'a readable text file');
  if (/\.abc$/iu.test(path)) return openTuneBook(path);
  const stream = createReadStream(path);
  try {
    await once(stream, 'open');
  } catch {
    throw unreadable(path, 'a text file that we may read');
  }
  return { stream, size: stats.size, bytesRead: () => stream.bytesRead };
}

/** The tunes of a book as lines of input; a tune without a key or a note is left to be reported. */
function openTuneBook(path: string): StudyInput {
  const lines = readAbc(readFileSync(path)).map(
    ({ key, line }, at) => `${JSON.stringify({ id: `${at + 1}`, key, line })}\n`,
  );
  return { stream: Readable.from(lines), size: 0, bytesRead: () => 0 };
}

function unreadable(value: string, expected: string): ReedplateError {
  return new ReedplateError({ code: 'FILE_UNREADABLE', value, expected });
}

/**
 * Opens the output of a study: a file that results are added to, or standard output.
 *
 * @throws ReedplateError `USAGE` where the file is there and is not to be resumed
 */
export function openOutput(path: string | undefined, resume: boolean): Writable {
  if (path === undefined) return process.stdout;
  if (existsSync(path) && !resume) {
    throw new ReedplateError({
      code: 'USAGE',
      value: path,
      expected: 'a file that is not there yet, or --resume',
    });
  }
  return createWriteStream(path, { flags: 'a' });
}

/** Whether an error says only that the reader, such as `head`, has gone away. */
export function isReaderGone(error: unknown): boolean {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  return code === 'EPIPE' || code === 'ERR_STREAM_PREMATURE_CLOSE';
}

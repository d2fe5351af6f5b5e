import { isReedplateError } from '@reedplate/pitch';
import { CommanderError } from 'commander';
import { oneLine } from './shared/one-line.js';
import type { Terminal } from './terminal.js';

/** Exit code for a fault of the machine, such as a full disk, or of this program, and for work done in part. */
export const EXIT_FAULT = 1;

/** Exit code for words and input that are not understood. */
export const EXIT_USAGE = 2;

/** The exit code of an error, after saying in one line what was wrong; never its stack. */
export function exitCodeOf(error: unknown, terminal: Pick<Terminal, 'err'>): number {
  terminal.err(`reedplate: ${oneLine(sayError(error))}\n`);
  if (!isReedplateError(error)) return EXIT_FAULT;
  return error.code === 'FILE_UNWRITABLE' ? EXIT_FAULT : EXIT_USAGE;
}

function sayError(error: unknown): string {
  if (isReedplateError(error)) return error.message;
  // What the system refuses has a number; anything else that is thrown is a fault of ours.
  if (error instanceof Error && 'errno' in error) return error.message;
  return `this is a fault of reedplate, please report it: ${error}`;
}

const PARTLY_DONE = 'reedplate.partly-done';

/** Ends a verb that has done its work but for a part, which it has said: exit code 1. */
export function endPartlyDone(): never {
  throw new CommanderError(EXIT_FAULT, PARTLY_DONE, '');
}

/** Whether a verb ended by {@link endPartlyDone}. */
export const isPartlyDone = (error: unknown): boolean =>
  error instanceof CommanderError && error.code === PARTLY_DONE;

import { isReedplateError } from '@reedplate/pitch';
import { CommanderError } from 'commander';
import { buildProgram } from './program.js';
import type { Terminal } from './terminal.js';

/** Exit code for input that is not understood. */
const EXIT_USAGE = 2;

/**
 * Runs the command and returns its exit code: 0 when done, 2 for input that is not understood.
 * A defect of our own is not caught, so that it shows its stack.
 *
 * @param words the command's words, without `node` and the script
 */
export function runCommand(words: readonly string[], terminal: Terminal): number {
  try {
    buildProgram(terminal).parse([...words], { from: 'user' });
    return 0;
  } catch (error) {
    return exitCodeOf(error, terminal);
  }
}

/** The exit code of an error, after saying in one line what was wrong. */
export function exitCodeOf(error: unknown, terminal: Pick<Terminal, 'err'>): number {
  // Help and version were asked for and are printed: commander only stops the parsing this way.
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : EXIT_USAGE;
  if (!isReedplateError(error)) throw error;
  terminal.err(`reedplate: ${error.message}\n`);
  return EXIT_USAGE;
}

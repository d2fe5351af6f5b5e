import { CommanderError } from 'commander';
import { EXIT_FAULT, EXIT_USAGE, exitCodeOf, isPartlyDone } from './exit-code.js';
import { buildProgram } from './program.js';
import { requireValues } from './require-values.js';
import { sayUsage } from './say-usage.js';
import type { Terminal } from './terminal.js';

/**
 * Runs the command and gives its exit code: 0 when done, 2 for words or input that are not
 * understood, 1 where the machine or the program fails or a part could not be done. What was wrong is said in one line.
 *
 * @param words the command's words, without `node` and the script
 */
export async function runCommand(words: readonly string[], terminal: Terminal): Promise<number> {
  try {
    const program = await buildProgram(words, terminal);
    requireValues(program, words);
    await program.parseAsync([...words], { from: 'user' });
    return 0;
  } catch (error) {
    if (isPartlyDone(error)) return EXIT_FAULT;
    if (!(error instanceof CommanderError)) return exitCodeOf(error, terminal);
    // Help and version were asked for and are printed: commander only stops the parsing this way.
    if (error.exitCode === 0) return 0;
    // Without a verb the help is printed; there is nothing to say besides.
    if (error.code !== 'commander.help') terminal.err(`reedplate: ${sayUsage(error, words)}\n`);
    return EXIT_USAGE;
  }
}

import { readBytes, readText, writeBytes } from '@reedplate/files';
import { exitCodeOf, runCommand } from './run.js';

/** Runs the command with the words of the process, and sets its exit code. */
export function main(): void {
  // A reader such as `head` may close the pipe before all is written; that is no error of ours.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exitCode = 0;
  });

  const { NO_COLOR, FORCE_COLOR } = process.env;
  const colourWanted = FORCE_COLOR !== undefined && FORCE_COLOR !== '0';

  const err = (text: string): void => void process.stderr.write(text);

  process.exitCode = runCommand(process.argv.slice(2), {
    out: (text) => void process.stdout.write(text),
    err,
    colour: !NO_COLOR && (colourWanted || process.stdout.isTTY === true),
    readText,
    readBytes,
    writeBytes,
    later: (work) => {
      work().catch((error: unknown) => {
        process.exitCode = exitCodeOf(error, { err });
      });
    },
  });
}

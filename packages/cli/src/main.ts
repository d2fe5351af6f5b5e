import {
  listFolder,
  readBytes,
  readText,
  whyUnwritten,
  writeBytes,
  writeFolder,
} from '@reedplate/files';
import { EXIT_FAULT } from './exit-code.js';
import { runCommand } from './run.js';

/** Columns of a print where nothing says how wide the screen is. */
const USUAL_WIDTH = 80;

/** Narrowest print: nothing of ours can be read in less. */
const LEAST_WIDTH = 40;

/** Runs the command with the words of the process, and sets its exit code. */
export async function main(): Promise<void> {
  const written = watch(process.stdout);
  // Where errors cannot be said, there is nobody to say so to.
  process.stderr.on('error', () => {});
  const { NO_COLOR, FORCE_COLOR } = process.env;
  const colourWanted = FORCE_COLOR !== undefined && FORCE_COLOR !== '0';

  const code = await runCommand(process.argv.slice(2), {
    out: (text) => void process.stdout.write(text),
    err: sayError,
    colour: !NO_COLOR && (colourWanted || process.stdout.isTTY === true),
    width: Math.max(LEAST_WIDTH, process.stdout.columns ?? USUAL_WIDTH),
    readText,
    readBytes,
    listFolder,
    writeBytes,
    writeFolder,
  });
  // What could not be printed was not said, whatever the verb did.
  const fault = await written();
  if (fault !== undefined) {
    sayError(`reedplate: standard output cannot be written: ${whyUnwritten(fault)}\n`);
  }
  process.exitCode = fault === undefined ? code : EXIT_FAULT;
}

const sayError = (text: string): void => void process.stderr.write(text);

/**
 * Watches a stream from now on. What it gives back waits until all is written, and gives what went
 * wrong. A reader such as `head` may close the pipe before all is written: that is no fault.
 */
function watch(stream: NodeJS.WriteStream): () => Promise<Error | undefined> {
  let fault: Error | undefined;
  stream.once('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') fault = error;
    // What is still to be written fails as well, and says nothing new.
    stream.on('error', () => {});
  });
  return () =>
    new Promise((resolve) => {
      // The event of a fault comes a moment after the write that met it.
      const look = () => setImmediate(() => resolve(fault));
      // Nothing more is written without need: a full disk refuses nothing, too.
      if (stream.writableLength === 0) look();
      else stream.write('', look);
    });
}

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

/** What went wrong with a stream. */
type StreamFault = Error & { readonly code?: string };

/** What the command needs of a stream that it prints on: those of a process, and any `Writable`, have it. */
export interface PrintStream {
  write(text: string, done?: () => void): boolean;
  on(event: 'error', listener: (fault: StreamFault) => void): unknown;
  once(event: 'error', listener: (fault: StreamFault) => void): unknown;
  /** Bytes that wait to be written. */
  readonly writableLength: number;
}

/** What the command needs of the process that runs it. */
export interface Host {
  /** Node, the script, then the command's words. */
  readonly argv: readonly string[];
  readonly env: Readonly<Record<string, string | undefined>>;
  /** A stream that is a screen says so, and how wide it is. */
  readonly stdout: PrintStream & { readonly isTTY?: boolean; readonly columns?: number };
  readonly stderr: PrintStream;
}

/** Runs the command with the words of a process, on its streams, and gives its exit code. */
export async function main({ argv, env, stdout, stderr }: Host): Promise<number> {
  const written = watch(stdout);
  // Where errors cannot be said, there is nobody to say so to.
  stderr.on('error', () => {});
  const sayError = (text: string): void => void stderr.write(text);

  const code = await runCommand(argv.slice(2), {
    out: (text) => void stdout.write(text),
    err: sayError,
    colour: wantsColour(env, stdout),
    width: Math.max(LEAST_WIDTH, stdout.columns ?? USUAL_WIDTH),
    readText,
    readBytes,
    listFolder,
    writeBytes,
    writeFolder,
  });
  // What could not be printed was not said, whatever the verb did.
  const fault = await written();
  if (fault === undefined) return code;
  sayError(`reedplate: standard output cannot be written: ${whyUnwritten(fault)}\n`);
  return EXIT_FAULT;
}

function wantsColour({ NO_COLOR, FORCE_COLOR }: Host['env'], { isTTY }: Host['stdout']): boolean {
  if (NO_COLOR) return false;
  return isTTY === true || (FORCE_COLOR !== undefined && FORCE_COLOR !== '0');
}

/**
 * Watches a stream from now on. What it gives back waits until all is written, and gives what went
 * wrong. A reader such as `head` may close the pipe before all is written: that is no fault.
 */
function watch(stream: PrintStream): () => Promise<Error | undefined> {
  let fault: Error | undefined;
  stream.once('error', (error: StreamFault) => {
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

import { runCommand } from '../run.js';
import type { Terminal } from '../terminal.js';

/** What the command printed and how it ended. */
export interface Outcome {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

function noFile(path: string): never {
  throw new Error(`no file ${path} in this test`);
}

/** Runs the command on a terminal that keeps what is written. */
export async function runWords(
  words: readonly string[],
  parts: Partial<Terminal> = {},
): Promise<Outcome> {
  const written = { out: '', err: '' };
  const { readText = noFile } = parts;
  const code = await runCommand(words, {
    out: (text) => {
      written.out += text;
    },
    err: (text) => {
      written.err += text;
    },
    colour: false,
    // Wide, so that a test reads a row as one line.
    width: 200,
    readText,
    readBytes: (path) => new TextEncoder().encode(readText(path)),
    listFolder: noFile,
    writeBytes: noFile,
    writeFolder: noFile,
    ...parts,
  });
  return { code, ...written };
}

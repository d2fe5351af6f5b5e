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
export function runWords(words: readonly string[], parts: Partial<Terminal> = {}): Outcome {
  const written = { out: '', err: '' };
  const { readText = noFile } = parts;
  const code = runCommand(words, {
    out: (text) => {
      written.out += text;
    },
    err: (text) => {
      written.err += text;
    },
    colour: false,
    readText,
    readBytes: (path) => new TextEncoder().encode(readText(path)),
    writeBytes: noFile,
    later: () => {
      throw new Error('no later work in this test');
    },
    ...parts,
  });
  return { code, ...written };
}

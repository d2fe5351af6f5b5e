import { exitCodeOf } from '../run.js';
import type { Terminal } from '../terminal.js';
import { type Outcome, runWords } from './run-words.fixture.js';

/** Runs a command whose work goes on after it has returned, to the end of that work. */
export async function runLater(
  words: readonly string[],
  parts: Partial<Terminal> = {},
): Promise<Outcome> {
  const written = { out: '', err: '' };
  let work: Promise<void> | undefined;
  const err = (text: string): void => {
    written.err += text;
  };
  const { code } = runWords(words, {
    ...parts,
    out: (text) => {
      written.out += text;
    },
    err,
    later: (begin) => {
      work = begin();
    },
  });
  try {
    await work;
    return { code, ...written };
  } catch (error) {
    return { code: exitCodeOf(error, { err }), ...written };
  }
}

import { exitCodeOf } from '../command/run.js';
import { type Outcome, runWords } from '../command/run-words.fixture.js';
import type { Terminal } from '../command/terminal.js';

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

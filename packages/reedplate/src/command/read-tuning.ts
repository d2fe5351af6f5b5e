import { readTuning, type Tuning, tuningById } from '@reedplate/layout';
import { isReedplateError, ReedplateError } from '@reedplate/pitch';
import type { Terminal } from './terminal.js';

const FILE = /[./\\]|^-$/u;

/**
 * A tuning from the word of a user: the id of one in the catalogue, or a JSON file with one (a word
 * with a dot or a slash, or `-` for standard input).
 *
 * @throws ReedplateError `TUNING_UNKNOWN`; from a file, with `where.file`, `JSON_MALFORMED` and
 * what `readTuning` throws
 */
export function readTuningWord(word: string, terminal: Pick<Terminal, 'readText'>): Tuning {
  if (!FILE.test(word)) return tuningById(word);
  const text = terminal.readText(word);
  try {
    return readTuning(text);
  } catch (error) {
    if (!isReedplateError(error)) throw error;
    const { code, value, expected, nearest, where } = error;
    throw new ReedplateError({ code, value, expected, nearest, where: { ...where, file: word } });
  }
}

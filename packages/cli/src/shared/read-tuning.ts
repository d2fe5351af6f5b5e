import { readInFile } from '@reedplate/files';
import { readTuning, TUNINGS, type Tuning, tuningById } from '@reedplate/layout';
import type { Terminal } from '../terminal.js';
import { isFileName } from './file-words.js';
import { readList } from './read-words.js';

/** What a verb says of a word for {@link readTuningWord}. */
export const TUNING_WORD = 'an id or a JSON file';

/** What a verb says of words for {@link readTuningList}. */
export const TUNING_LIST = 'tunings apart by commas, each an id or a JSON file, or all';

/**
 * A tuning from the word of a user: the id of one in the catalogue, or a JSON file with one (a word
 * with a dot or a slash, or `-` for standard input).
 *
 * @throws ReedplateError `TUNING_UNKNOWN`; from a file, with `where.file`, `JSON_MALFORMED` and
 * what `readTuning` throws
 */
export function readTuningWord(word: string, terminal: Pick<Terminal, 'readText'>): Tuning {
  if (!isFileName(word)) return tuningById(word);
  const text = terminal.readText(word);
  return readInFile(word, () => readTuning(text));
}

/**
 * Tunings from words apart by commas, each as {@link readTuningWord} reads it, or `all` for the
 * catalogue.
 *
 * @throws ReedplateError `LIST_EMPTY`, and what {@link readTuningWord} throws
 */
export function readTuningList(
  words: string,
  terminal: Pick<Terminal, 'readText'>,
): readonly Tuning[] {
  if (words.trim() === 'all') return TUNINGS;
  return readList(words).map((word) => readTuningWord(word, terminal));
}

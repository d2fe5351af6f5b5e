import { readInFile } from '@reedplate/files';
import { readJson } from '@reedplate/pitch';
import { type EffortModel, type EffortModelLike, readEffortModel } from '@reedplate/playability';
import type { Terminal } from '../terminal.js';
import { isFileName } from './file-words.js';

/**
 * An effort model from the word of a user: the id of one in the catalogue, or a JSON file with one (a word with a
 * dot or a slash, or `-` for standard input).
 *
 * @throws ReedplateError from a file, with `where.file`, `JSON_MALFORMED` and `MODEL_INVALID`
 */
export function readModelWord(word: string, terminal: Pick<Terminal, 'readText'>): EffortModelLike {
  if (!isFileName(word)) return word;
  const text = terminal.readText(word);
  return readInFile(word, () => readEffortModel(readJson(text) as EffortModel));
}

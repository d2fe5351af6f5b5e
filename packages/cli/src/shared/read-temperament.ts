import { readScala, type Temperament, temperamentById } from '@reedplate/layout';
import { asErrorOf } from '@reedplate/pitch';
import type { Terminal } from '../terminal.js';
import { isFileName } from './file-words.js';

/**
 * A temperament from the word of a user: the id of one in the catalogue, or a Scala file (a word
 * with a dot or a slash, or `-` for standard input).
 *
 * @throws ReedplateError `TEMPERAMENT_UNKNOWN`; from a file, with `where.file`, `SCALA_SYNTAX`
 */
export function readTemperamentWord(
  word: string,
  terminal: Pick<Terminal, 'readText'>,
): Temperament {
  if (!isFileName(word)) return temperamentById(word);
  const text = terminal.readText(word);
  return asErrorOf('SCALA_SYNTAX', { file: word }, () => readScala(text));
}

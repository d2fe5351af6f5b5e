import { readInFile } from '@reedplate/files';
import { type Form, formById, parseForm, readForm } from '@reedplate/form';
import { type Key, ReedplateError } from '@reedplate/pitch';
import type { Terminal } from '../terminal.js';
import { isFileName } from './file-words.js';

/** What is needed to read a form from words: where files are read, and the key of the song. */
export interface FormReading {
  readonly terminal: Pick<Terminal, 'readText'>;
  /** Key in which chord names are read. */
  readonly key: Key;
}

/** Chord names begin with a capital A to G, where no numeral does. */
const CHORD_NAME = /(?:^|[\s|:])[A-G]/u;

/**
 * A form from the words of a user: text with a bar line is the form itself, in numerals or in chord
 * names; a word with a dot or a slash (or `-`, for standard input) is a file with such text or with
 * JSON; any other word is the id of a form of the catalogue.
 *
 * @throws ReedplateError what `parseForm`, `readForm`, `formById` and reading the file throw; from
 * a file with `where.file`
 */
export function readFormWords(words: string, { terminal, key }: FormReading): Form {
  if (words.includes('|')) return readNotation(words, key);
  if (!isFileName(words)) return readId(words);
  const text = terminal.readText(words);
  return readInFile(words, () =>
    text.trimStart().startsWith('{') ? readForm(text) : readNotation(text, key),
  );
}

/** Ids have no blanks: bars without bar lines were most likely meant. */
function readId(words: string): Form {
  if (!/\s/u.test(words.trim())) return formById(words);
  throw new ReedplateError({
    code: 'FORM_UNKNOWN',
    value: words,
    expected: 'the id of a form, or bars with a line between them: "I7 | IV7 | V7"',
  });
}

function readNotation(text: string, key: Key): Form {
  return parseForm(text, CHORD_NAME.test(text) ? { key } : {});
}

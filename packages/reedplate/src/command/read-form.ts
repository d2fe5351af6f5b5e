import { type Form, formById, parseForm, readForm } from '@reedplate/form';
import { isReedplateError, type Key, ReedplateError } from '@reedplate/pitch';
import type { Terminal } from './terminal.js';

/** What is needed to read a form from words: where files are read, and the key of the song. */
export interface FormReading {
  readonly terminal: Pick<Terminal, 'readText'>;
  /** Key in which chord names are read. */
  readonly key: Key;
}

const BAR_LINE = '|';
const FILE = /[./\\]|^-$/u;

/** Whether words name a file rather than say something themselves: text with a bar line never does. */
export function isFileName(words: string): boolean {
  return !words.includes(BAR_LINE) && FILE.test(words);
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
export function readFormWords(words: string, reading: FormReading): Form {
  if (words.includes(BAR_LINE)) return readNotation(words, reading.key);
  if (!isFileName(words)) return formById(words);
  const text = reading.terminal.readText(words);
  try {
    return text.trimStart().startsWith('{') ? readForm(text) : readNotation(text, reading.key);
  } catch (error) {
    throw isReedplateError(error) ? inFile(error, words) : error;
  }
}

function readNotation(text: string, key: Key): Form {
  return parseForm(text, CHORD_NAME.test(text) ? { key } : {});
}

function inFile(error: ReedplateError, file: string): ReedplateError {
  const { code, value, expected, nearest, where } = error;
  return new ReedplateError({ code, value, expected, nearest, where: { ...where, file } });
}

import {
  isReedplateError,
  type Key,
  type KeyLike,
  numeralOfChord,
  parseChord,
  parseNumeral,
  toKey,
} from '@reedplate/pitch';
import type { Mark } from './tokens.js';
import { syntaxError } from './written-bars.js';

/** Reads one chord mark of a bar: canonical numeral text, or null for `N.C.` */
export type ChordReader = (mark: Mark, bar: number) => string | null;

const NO_CHORD = /^n\.?c\.?$/iu;

/** A reader of numerals, or of chord names where a key is given. */
export function chordReader(key: KeyLike | undefined): ChordReader {
  const home = key === undefined ? undefined : toKey(key);
  return (mark, bar) => (NO_CHORD.test(mark.text) ? null : readChord(mark, bar, home));
}

function readChord(mark: Mark, bar: number, key: Key | undefined): string {
  try {
    if (key === undefined) return parseNumeral(mark.text).text;
    return numeralOfChord(parseChord(mark.text), key).text;
  } catch (error) {
    if (!isReedplateError(error)) throw error;
    throw syntaxError(mark, bar, expectedMark(mark, key), error.nearest);
  }
}

function expectedMark({ text }: Mark, key: Key | undefined): string {
  if (text === '/') return 'a chord before the first / of a bar';
  if (text === '%') return '% alone in its bar';
  if (/^\d/u.test(text)) return 'a chord; the number of an ending stands first in its bar';
  if (key !== undefined) return `a chord such as ${key.tonic}7, N.C., % or a bar line`;
  return isChordName(text)
    ? 'a Roman numeral such as I7, or a key in which to read chord names'
    : 'a Roman numeral such as I7 or iv, N.C., % or a bar line';
}

function isChordName(text: string): boolean {
  try {
    return parseChord(text).symbol !== '';
  } catch {
    return false;
  }
}

import { type Metre, parseMetre } from '@reedplate/line';
import { type KeyLike, type OptionNames, ReedplateError, requireOptions } from '@reedplate/pitch';
import { type ChordReader, chordReader } from './chord-reader.js';
import { FORM_DETAILS, type FormDetails, MOST_SHARES, makeForm } from './make-form.js';
import { playRepeats, type ReadBar } from './repeats.js';
import { type Mark, type Token, tokenise } from './tokens.js';
import type { Feel, Form, FormBar, FormChord } from './types.js';
import { syntaxError, type WrittenBar, writtenBars } from './written-bars.js';

/** How {@link parseForm} reads, and what it cannot read from the text. */
export interface ParseFormOptions extends FormDetails {
  /** With a key the chords are names, such as `G7`; without, the default, they are numerals. */
  readonly key?: KeyLike;
}

const PARSE_OPTIONS: OptionNames<ParseFormOptions> = { ...FORM_DETAILS, key: true };

const LONGEST_TEXT = 100_000;

/**
 * Reads a form from one line or page of lead-sheet marks: bar lines `|` or `||`, repeats `|:` `:|`
 * with endings `1.` `2.`, numerals (or chord names in a key), `%` for the bar before again, `N.C.`
 * for no chord. Chords of one bar share it evenly; where the beats are given, each `/` is one more
 * beat of the chord before it. `12/8`, `shuffle`, `straight` or `slow` may stand before the first
 * bar; in the text they have precedence over the options.
 *
 * The bass note of a chord name (`C/G`) is left out: a form holds chords, not voicings.
 *
 * @param text one text, or a text for each bar, as `Progression` of tonal gives them: numerals, or chord
 * names where a key is given
 * @throws ReedplateError `FORM_SYNTAX` with `where.bar`, `where.line` and `where.column`;
 * `METRE_UNKNOWN`, `KEY_UNKNOWN`, and `FORM_INVALID` for a wrong option
 * @example
 * ```ts
 * import { parseForm } from '@reedplate/form';
 *
 * parseForm('| I7 | IV7 / / V7 |').bars[1]; // => [{ numeral: 'IV7', weight: 3 }, { numeral: 'V7', weight: 1 }]
 * parseForm('|: I7 | % |1. V7 :|2. I7 ||').bars.length; // => 6
 * parseForm('| G7 | C7 |', { key: 'G' }).bars[1]; // => [{ numeral: 'IV7', weight: 1 }]
 * parseForm(['G7', 'C7'], { key: 'G' }).bars.length; // => 2
 * parseForm('| I7 | VIII7 |'); // throws FORM_SYNTAX
 * ```
 */
export function parseForm(text: string | readonly string[], options: ParseFormOptions = {}): Form {
  const { key, ...details } = requireOptions(options, PARSE_OPTIONS, 'parseForm');
  const { head, body } = splitHead(tokenise(requireText(joinBars(text))));
  const bars = writtenBars(body);
  if (bars.length === 0) throw emptyForm(text);
  return makeForm(playRepeats(readBars(bars, chordReader(key))), { ...details, ...readHead(head) });
}

/** Bars given one by one as one text, bar lines between them. */
export function joinBars(text: string | readonly string[]): unknown {
  if (!Array.isArray(text)) return text;
  for (const bar of text) requireText(bar);
  return text.join(' | ');
}

function requireText(text: unknown): string {
  if (typeof text === 'string' && text.length <= LONGEST_TEXT) return text;
  throw new ReedplateError({
    code: 'FORM_SYNTAX',
    value: text,
    expected: `text of at most ${LONGEST_TEXT} characters`,
  });
}

function emptyForm(text: unknown): ReedplateError {
  const where = { bar: 1, line: 1, column: 1 };
  const expected = 'at least one bar, such as | I7 | IV7 |';
  return new ReedplateError({ code: 'FORM_SYNTAX', value: text, expected, where });
}

const SIGNATURE = /^\d{1,2}\/\d{1,2}$/u;
const FEEL_WORDS: ReadonlyMap<string, Feel> = new Map([
  ['straight', 'straight'],
  ['shuffle', 'shuffle'],
  ['slow', 'slow-12/8'],
]);

function isHeadMark({ kind, text }: Token): boolean {
  return kind === 'mark' && (SIGNATURE.test(text) || FEEL_WORDS.has(text.toLowerCase()));
}

function splitHead(tokens: readonly Token[]): {
  readonly head: readonly Token[];
  readonly body: readonly Token[];
} {
  const found = tokens.findIndex((token) => !isHeadMark(token));
  const length = found === -1 ? tokens.length : found;
  return { head: tokens.slice(0, length), body: tokens.slice(length) };
}

function readHead(head: readonly Token[]): Pick<FormDetails, 'metre' | 'feel'> {
  const metre = head.findLast(({ text }) => SIGNATURE.test(text))?.text;
  const feel = head.map(({ text }) => FEEL_WORDS.get(text.toLowerCase())).findLast(Boolean);
  if (metre !== undefined) parseMetre(metre);
  return {
    ...(metre === undefined ? {} : { metre: metre as Metre }),
    ...(feel === undefined ? {} : { feel }),
  };
}

function readBars(bars: readonly WrittenBar[], read: ChordReader): readonly ReadBar[] {
  const done: ReadBar[] = [];
  for (const written of bars) {
    const chords = isRepeatSign(written)
      ? repeatedBar(written, done.at(-1)?.chords)
      : readBar(written, read);
    done.push({ written, chords });
  }
  return done;
}

function isRepeatSign({ marks }: WrittenBar): boolean {
  return marks.length === 1 && marks[0]?.text === '%';
}

function repeatedBar(written: WrittenBar, before: FormBar | undefined): FormBar {
  const [mark] = written.marks as readonly [Mark];
  if (before === undefined) {
    throw syntaxError(mark, written.bar, 'a chord or N.C.: % has no bar before it');
  }
  // After an ending the bar before on the page is not the bar that was played before.
  if (written.passes !== undefined) {
    throw syntaxError(mark, written.bar, 'a chord or N.C.: an ending does not begin with %');
  }
  return before;
}

function readBar({ marks, bar }: WrittenBar, read: ChordReader): FormBar {
  if (marks.length > MOST_SHARES) {
    throw syntaxError(marks[MOST_SHARES] as Mark, bar, `at most ${MOST_SHARES} marks in a bar`);
  }
  const chords: FormChord[] = [];
  for (const mark of marks) {
    const last = chords.at(-1);
    if (mark.text === '/' && last !== undefined) {
      chords[chords.length - 1] = { ...last, weight: last.weight + 1 };
    } else {
      chords.push({ numeral: read(mark, bar), weight: 1 });
    }
  }
  return chords;
}

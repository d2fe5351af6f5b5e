import { type OptionNames, ReedplateError, requireInteger, requireOptions } from '@reedplate/pitch';
import { TAB_DIALECTS, type TabDialectId } from './dialects.js';
import { dialectOf, TAB_OPTIONS, type TabOptions } from './format-tab.js';
import { parseMarkAt } from './parse-mark.js';
import type { TabEvent, TabMark } from './tab-mark.js';

/** How tablature is read. */
export interface ParseTabOptions extends TabOptions {
  /**
   * Holes of the harp it is written for, 1 to 16; default 16. Digits together name one hole where
   * the harp has it, else a chord: `12` is hole 12 on a harp of twelve, and holes 1 and 2 on one of ten.
   */
  readonly holes?: number;
}

/** The names of the options of tablature that is read. */
export const PARSE_TAB_OPTIONS: OptionNames<ParseTabOptions> = { ...TAB_OPTIONS, holes: true };

const MOST_HOLES = 16;

/**
 * Reads tablature in a dialect: marks apart by white space, bar lines (`|`) passed over. Marks in
 * brackets sound together, and so do marks joined with `&` or digits that stand together, as in
 * `45`. A bend is written with apostrophes, primes, slashes or flats, an overbend with `o` or `°`, or
 * as `OB6` or `6OB`.
 *
 * @throws ReedplateError `TAB_SYNTAX` with `where.line` and `where.column`; `OPTION_UNKNOWN`;
 *   `NUMBER_RANGE` for a wrong number of holes
 * @example
 * ```ts
 * import { parseTab } from '@reedplate/tab';
 *
 * parseTab("-3''")[0]; // => [{ hole: 3, breath: 'draw', bend: 2, over: false }]
 * parseTab('4↑', { dialect: 'arrows' })[0]; // => [{ hole: 4, breath: 'blow', bend: 0, over: false }]
 * parseTab('-45')[0]?.map((mark) => mark.hole); // => [4, 5]
 * parseTab('-17x'); // throws TAB_SYNTAX
 * ```
 */
export function parseTab(text: string, options: ParseTabOptions = {}): readonly TabEvent[] {
  const context = contextOf(requireOptions(options, PARSE_TAB_OPTIONS, 'parseTab'));
  // A tune says the same few words again and again: each is read once, and its marks are shared.
  const known = new Map<string, TabEvent>();
  const events: TabEvent[] = [];
  for (const word of wordsOf(text)) {
    const event = known.get(word.text) ?? readWord(word, context);
    known.set(word.text, event);
    events.push(event);
  }
  return events.length > 0 ? Object.freeze(events) : fail(text, { line: 1, column: 1 }, context);
}

/** A word of a text, and where it begins. */
export interface PlacedWord {
  readonly text: string;
  readonly place: TextPlace;
}

/** Line and column of a text, from 1. */
export interface TextPlace {
  readonly line: number;
  readonly column: number;
}

/** Reads one word of tablature: what sounds together. */
export function parseTabWord(word: PlacedWord, options: ParseTabOptions = {}): TabEvent {
  return readWord(word, contextOf(options));
}

function contextOf({ dialect = 'plus-minus', holes = MOST_HOLES }: ParseTabOptions): WordContext {
  const id = dialectOf(dialect).id as TabDialectId;
  requireInteger(holes, { min: 1, max: MOST_HOLES, what: 'the holes of a harp' });
  return { dialect: id, holes };
}

function readWord({ text, place }: PlacedWord, context: WordContext): TabEvent {
  const inside = /^[([](.*)[)\]]$/u.exec(text)?.[1];
  const at = { ...place, column: place.column + (inside === undefined ? 0 : 1) };
  const marks = parseMarks(inside ?? text, at, { ...context, joined: inside === undefined });
  return Object.freeze(marks);
}

/** The words of a text: what stands between white space and bar lines, brackets kept whole. */
export function* wordsOf(text: unknown): Generator<PlacedWord> {
  const lines = typeof text === 'string' ? text.split(/\r\n|\r|\n/u) : [];
  for (const [index, line] of lines.entries()) {
    for (const found of line.matchAll(WORD)) {
      yield { text: found[0], place: { line: index + 1, column: found.index + 1 } };
    }
  }
}

/** A word may hold brackets, and a length behind them. */
const WORD = /(?:\([^()]{0,500}\)|\[[^[\]]{0,500}\])[^\s|]*|[^\s|]+/gu;

interface WordContext {
  readonly dialect: TabDialectId;
  readonly holes: number;
}

interface MarkContext extends WordContext {
  /** Whether marks stand free and so need a `&` between them. */
  readonly joined: boolean;
}

function parseMarks(
  text: string,
  { line, column }: TextPlace,
  context: MarkContext,
): readonly TabMark[] {
  const { dialect, holes, joined } = context;
  const marks: TabMark[] = [];
  let at = skipSpace(text, 0);
  do {
    const isUnjoined = joined && marks.length > 0 && text.charAt(at) !== '&';
    if (isUnjoined) return fail(text, { line, column }, context);
    if (marks.length > 0 && text.charAt(at) === '&') at = skipSpace(text, at + 1);
    const read = parseMarkAt(text, at, dialect, holes);
    if (read === undefined) return fail(text.slice(at), { line, column: column + at }, context);
    marks.push(...read.marks);
    at = skipSpace(text, read.end);
  } while (at < text.length);
  return marks;
}

function skipSpace(text: string, from: number): number {
  let at = from;
  while (/[\s,]/u.test(text.charAt(at))) at += 1;
  return at;
}

function fail(value: string, where: TextPlace, { dialect, holes }: WordContext): never {
  throw new ReedplateError({
    code: 'TAB_SYNTAX',
    value,
    expected: `holes from 1 to ${holes} with their breath: ${TAB_DIALECTS[dialect].description}`,
    where,
  });
}

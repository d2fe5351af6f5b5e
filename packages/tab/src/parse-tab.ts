import { ReedplateError, requireInteger } from '@reedplate/pitch';
import { TAB_DIALECTS, type TabDialectId } from './dialects.js';
import { dialectOf, type TabOptions } from './format-tab.js';
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
 * parseTab('4↑', { dialect: 'arrow' })[0]; // => [{ hole: 4, breath: 'blow', bend: 0, over: false }]
 * parseTab('-45')[0]?.map((mark) => mark.hole); // => [4, 5]
 * parseTab('-17x'); // throws TAB_SYNTAX
 * ```
 */
export function parseTab(text: string, options: ParseTabOptions = {}): readonly TabEvent[] {
  const events = parseTabWords(text, options).map(({ event }) => event);
  return Object.freeze(events);
}

/** A word of tablature: what sounds together, and where and how it was written. */
export interface TabWord {
  readonly event: TabEvent;
  readonly text: string;
  readonly place: TextPlace;
}

/** Line and column of a text, from 1. */
export interface TextPlace {
  readonly line: number;
  readonly column: number;
}

/** Reads tablature word by word; at least one word. */
export function parseTabWords(text: string, options: ParseTabOptions = {}): readonly TabWord[] {
  const read = readWords(text, options);
  const { dialect = 'sign', holes = MOST_HOLES } = options;
  return read.length > 0 ? read : fail(text, { line: 1, column: 1 }, { dialect, holes });
}

function readWords(
  text: string,
  { dialect = 'sign', holes = MOST_HOLES }: ParseTabOptions,
): readonly TabWord[] {
  const id = dialectOf(dialect).id as TabDialectId;
  requireInteger(holes, { min: 1, max: MOST_HOLES, what: 'the holes of a harp' });
  return wordsOf(text).map(({ text: word, place }) => {
    const inside = /^[([](.*)[)\]]$/u.exec(word)?.[1];
    const at = { ...place, column: place.column + (inside === undefined ? 0 : 1) };
    const marks = parseMarks(inside ?? word, at, {
      dialect: id,
      holes,
      joined: inside === undefined,
    });
    return { event: Object.freeze(marks), text: word, place };
  });
}

/** The words of a text: what stands between white space and bar lines, brackets kept whole. */
export function wordsOf(
  text: unknown,
): readonly { readonly text: string; readonly place: TextPlace }[] {
  const lines = typeof text === 'string' ? text.split(/\r\n|\r|\n/u) : [];
  return lines.flatMap((line, index) =>
    Array.from(line.matchAll(WORD), (found) => ({
      text: found[0],
      place: { line: index + 1, column: found.index + 1 },
    })),
  );
}

/** A word may hold brackets, and a length behind them. */
const WORD = /(?:\([^()]{0,500}\)|\[[^[\]]{0,500}\])[^\s|]*|[^\s|]+/gu;

interface MarkContext {
  readonly dialect: TabDialectId;
  readonly holes: number;
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

function fail(
  value: string,
  where: TextPlace,
  { dialect, holes }: Omit<MarkContext, 'joined'>,
): never {
  throw new ReedplateError({
    code: 'TAB_SYNTAX',
    value,
    expected: `holes from 1 to ${holes} with their breath: ${TAB_DIALECTS[dialect].description}`,
    where,
  });
}

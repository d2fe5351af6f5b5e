import type { Breath, Hole } from '@reedplate/layout';
import { ReedplateError } from '@reedplate/pitch';
import type { TabDialectId } from './dialects.js';
import { dialectOf, type TabOptions } from './format-tab.js';
import type { TabEvent, TabMark } from './tab-mark.js';

const MOST_HOLES = 16;

/**
 * What one mark looks like in each dialect, the groups being breath, hole and manner. A number
 * without a sign is a blow; minus signs and primes may be the printed ones.
 */
const MARKS: Readonly<Record<TabDialectId, RegExp>> = {
  sign: /(?<breath>[+\-−–]?)(?<hole>\d{1,2})(?<bend>['’′″‴]*)(?<over>[o°]?)/uy,
  arrow: /(?<hole>\d{1,2})(?<breath>[↑↓])(?<bend>['’′″‴]*)(?<over>[o°]?)/uy,
  letter: /(?<hole>\d{1,2})(?<breath>[BD])(?<bend>['’′″‴]*)(?<over>[o°]?)/uy,
};

const DRAW_SIGNS: ReadonlySet<string> = new Set(['-', '−', '–', '↓', 'D']);

/** Semitones that one prime stands for: a double prime is two in one character. */
const PRIMES: ReadonlyMap<string, number> = new Map([
  ["'", 1],
  ['’', 1],
  ['′', 1],
  ['″', 2],
  ['‴', 3],
]);

/**
 * Reads tablature: marks apart by white space, chords in brackets, bar lines (`|`) passed over.
 *
 * @throws ReedplateError `TAB_SYNTAX` with `where.line` and `where.column`; `OPTION_UNKNOWN`
 * @example
 * ```ts
 * import { readTab } from '@reedplate/tab';
 *
 * readTab("-3''")[0]; // => [{ hole: 3, breath: 'draw', bend: 2, over: false }]
 * readTab('4↑', { dialect: 'arrow' })[0]; // => [{ hole: 4, breath: 'blow', bend: 0, over: false }]
 * readTab('-17'); // throws TAB_SYNTAX
 * ```
 */
export function readTab(text: string, { dialect = 'sign' }: TabOptions = {}): readonly TabEvent[] {
  const { id } = dialectOf(dialect);
  const mark = MARKS[id as TabDialectId];
  const lines = typeof text === 'string' ? text.split(/\r\n|\r|\n/u) : [];
  const events = lines.flatMap((line, index) => readTabLine(line, index + 1, mark));
  if (events.length > 0) return Object.freeze(events);
  throw syntaxError(text, { line: 1, column: 1 });
}

function readTabLine(text: string, line: number, mark: RegExp): TabEvent[] {
  const events: TabEvent[] = [];
  for (const { 0: word, index } of text.matchAll(/\([^()]*\)|[^\s|]+/gu)) {
    const bracketed = word.startsWith('(') && word.endsWith(')');
    const inside = bracketed ? word.slice(1, -1) : word;
    const at = { line, column: index + (bracketed ? 2 : 1) };
    const marks = readMarks(inside, mark, at);
    if (marks.length === 0 || (!bracketed && marks.length > 1)) throw syntaxError(word, at);
    events.push(Object.freeze(marks));
  }
  return events;
}

interface TextPlace {
  readonly line: number;
  readonly column: number;
}

function readMarks(text: string, mark: RegExp, { line, column }: TextPlace): TabMark[] {
  const marks: TabMark[] = [];
  let at = skipSpace(text, 0);
  while (at < text.length) {
    mark.lastIndex = at;
    const found = mark.exec(text);
    const read = found?.groups === undefined ? undefined : toMark(found.groups);
    if (read === undefined) throw syntaxError(text.slice(at), { line, column: column + at });
    marks.push(read);
    at = skipSpace(text, mark.lastIndex);
  }
  return marks;
}

function skipSpace(text: string, from: number): number {
  let at = from;
  while (/\s/u.test(text.charAt(at))) at += 1;
  return at;
}

function toMark(groups: Readonly<Record<string, string>>): TabMark | undefined {
  const hole = Number(groups.hole);
  const bend = semitonesOfPrimes(groups.bend ?? '');
  const over = (groups.over ?? '') !== '';
  if (hole < 1 || hole > MOST_HOLES || (over && bend > 0)) return undefined;
  const breath: Breath = DRAW_SIGNS.has(groups.breath ?? '') ? 'draw' : 'blow';
  return Object.freeze({ hole: hole as Hole, breath, bend, over });
}

function semitonesOfPrimes(primes: string): number {
  return [...primes].reduce((sum, prime) => sum + (PRIMES.get(prime) ?? 0), 0);
}

function syntaxError(value: string, where: TextPlace): ReedplateError {
  return new ReedplateError({
    code: 'TAB_SYNTAX',
    value,
    expected:
      "a hole from 1 to 16 with its breath, such as +4, -4, -3'' or +6o, or a chord (-1-2-3)",
    where,
  });
}

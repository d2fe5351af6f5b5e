import { parseMetre } from '@reedplate/line';
import { type ErrorPlace, isReedplateError, nearestOf, ReedplateError } from '@reedplate/pitch';
import { readBeats } from '@reedplate/tab';
import { invalidPhrase } from './invalid-phrase.js';
import { gradeOfTab, levelOfTab } from './level-of-tab.js';
import { makePhrase, PHRASE_DETAILS, type PhraseDetails } from './make-phrase.js';
import { parsePhrase } from './parse-phrase.js';
import type { Phrase } from './phrase.js';

/** A phrase of a text: what its head says, and its tab. */
interface Headed {
  /** Words of the head by their names, each with the line it stands in, from 1. */
  readonly head: ReadonlyMap<string, { readonly words: string; readonly line: number }>;
  /** Its lines with those of the head and comments blank, so that a line of it is so many lines below the first. */
  readonly tab: string;
  /** Line in which the phrase begins. */
  readonly line: number;
}

const ANY_NOTE = { at: 0, length: 1, degree: '1', octave: 0 } as const;
const HEAD = /^\s*([A-Za-z]{2,20})\s*:(.*)$/u;
/** A whole number or a fraction; that neither is 0 is checked where lengths of tab are read. */
const BEATS = /^\d{1,4}(?:\/\d{1,4})?$/u;
const MOST_PHRASES = 1000;
const COMMENT = /^\s*#/u;
/** Details that are numbers; the others are words. */
const NUMBERS: ReadonlySet<string> = new Set(['position', 'grade']);

/**
 * Phrases written as tab under heads: lines such as `kind: riff` say what a phrase is, the lines after them are its
 * tab, a line that begins with # is a comment. A head after tab begins the next phrase.
 */
export function parseHeadedTab(text: string, usualId: string): readonly Phrase[] {
  return headedOf(text).map((headed, index) =>
    placed(headed, () => phraseOf(headed, index === 0 ? usualId : `${usualId}-${index + 1}`)),
  );
}

function headedOf(text: string): readonly Headed[] {
  const lines = text.split(/\r?\n/u);
  const starts: number[] = [];
  let wasTab = true;
  for (const [at, line] of lines.entries()) {
    const isHead = HEAD.test(line);
    const isTab = !isHead && !COMMENT.test(line) && line.trim() !== '';
    if ((isHead && wasTab) || (isTab && starts.length === 0)) starts.push(at);
    if (isHead || isTab) wasTab = isTab;
  }
  if (starts.length > MOST_PHRASES) {
    throw invalidPhrase(starts.length, `at most ${MOST_PHRASES} phrases in a text`);
  }
  return starts.map((from, index) => headedIn(lines, from, starts[index + 1] ?? lines.length));
}

function headedIn(lines: readonly string[], from: number, to: number): Headed {
  const head = new Map<string, { words: string; line: number }>();
  const tab = lines.slice(from, to).map((line, below) => {
    if (COMMENT.test(line)) return '';
    const [, name, words = ''] = HEAD.exec(line) ?? [];
    if (name === undefined) return line;
    const place = { line: from + below + 1 };
    if (head.has(name)) throw invalidPhrase(name, 'a head with each name once', place);
    head.set(name, { words: words.trim(), ...place });
    return '';
  });
  return { head, tab: tab.join('\n'), line: from + 1 };
}

function phraseOf({ head, tab }: Headed, usualId: string): Phrase {
  if (tab.trim() === '') throw invalidPhrase('', 'tab below the head of a phrase');
  const details = detailsOf(head, usualId);
  const phrase = parsePhrase(tab, { level: levelOfTab(tab), source: 'our own', ...details });
  return details.grade === undefined
    ? Object.freeze({ ...phrase, grade: gradeOfTab(tab) })
    : phrase;
}

function detailsOf(head: Headed['head'], usualId: string): PhraseDetails {
  const said: Record<string, string | number> = { id: idOf(head.get('name')?.words, usualId) };
  for (const [name, { words }] of head) {
    if (!Object.hasOwn(PHRASE_DETAILS, name)) throw unknownHead(name);
    said[name] = NUMBERS.has(name) ? Number(words) : words;
  }
  if (said.pickup !== undefined) said.pickup = pickupTicks(said);
  // Only the names are known to be right here: a phrase of one note has each value checked before the tab is read.
  const details = said as PhraseDetails;
  makePhrase([ANY_NOTE], details);
  return details;
}

function unknownHead(name: string): ReedplateError {
  const names = Object.keys(PHRASE_DETAILS);
  return new ReedplateError({
    code: 'PHRASE_INVALID',
    value: name,
    expected: `a head of a phrase: ${names.join(', ')}`,
    nearest: nearestOf(name, names),
    where: { path: name },
  });
}

/** A pickup is written in felt beats, `1` or `1/2`, as lengths of tab are. */
function pickupTicks({ pickup, metre = '4/4' }: Readonly<Record<string, string | number>>): number {
  const { beatTicks } = parseMetre(metre as '4/4');
  const beats = BEATS.test(`${pickup}`) ? readBeats(`r:${pickup}`).beats : undefined;
  if (pickup === '0') return 0;
  if (beats === undefined) {
    throw invalidPhrase(pickup, 'felt beats of a pickup, such as 1 or 1/2', { path: 'pickup' });
  }
  return Math.round(beats * beatTicks);
}

/** The name as an id: lower-case words with hyphens. */
export function idOf(name: string | undefined, usual: string): string {
  const words = (name ?? '').toLowerCase().match(/[a-z0-9]+/gu);
  return words === null ? usual : words.join('-');
}

/** Errors that name a field stand in its line of the head; those of the tab in their own line; others at the start. */
function placed(headed: Headed, read: () => Phrase): Phrase {
  try {
    return read();
  } catch (error) {
    if (!isReedplateError(error)) throw error;
    const { code, value, expected, nearest, where } = error;
    throw new ReedplateError({ code, value, expected, nearest, where: placeIn(headed, where) });
  }
}

function placeIn({ head, tab, line }: Headed, where: ErrorPlace): ErrorPlace {
  const { path, column, ...more } = where;
  const ofHead = path === undefined ? undefined : head.get(path);
  if (ofHead !== undefined) return { ...more, line: ofHead.line };
  if (where.line !== undefined) return { ...where, line: line - 1 + where.line };
  if (column === undefined) return { ...more, line };
  // How a note is played is counted in the whole tab.
  const before = tab.slice(0, column - 1).split('\n');
  return { ...more, line: line - 1 + before.length, column: (before.at(-1) ?? '').length + 1 };
}

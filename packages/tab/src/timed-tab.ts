import { commonDivisor } from '@reedplate/line';
import { ReedplateError, requireOptions, requirePositive, requireShape } from '@reedplate/pitch';
import { formatTab, TAB_OPTIONS, type TabOptions } from './format-tab.js';
import {
  PARSE_TAB_OPTIONS,
  type ParseTabOptions,
  type PlacedWord,
  parseTab,
  parseTabWord,
  type TextPlace,
  wordsOf,
} from './parse-tab.js';
import type { TabEvent } from './tab-mark.js';

/** Marks with a length. */
export interface TimedTab {
  /** What sounds together; empty for a rest. */
  readonly marks: TabEvent;
  /** Felt beats, above 0 and at most 10,000. */
  readonly beats: number;
}

const LENGTH = /^(.*?):(\d{1,8}(?:\.\d{1,4})?)(?:\/(\d{1,4}))?$/su;
const REST = /^[rR]$/u;
const REST_MARKS: TabEvent = Object.freeze([]);
const MOST_BEATS = 10_000;

/**
 * Reads tablature with rhythm: behind a mark or a chord a colon and its length in beats, `-2:3`,
 * `-2:1/2`, `(-1-2):1.5`; a mark without one lasts a beat. `r` is a rest. Bar lines are passed over.
 *
 * @throws ReedplateError `TAB_SYNTAX` with `where.line` and `where.column`; `OPTION_UNKNOWN`;
 *   `NUMBER_RANGE`
 * @example
 * ```ts
 * import { parseTimedTab } from '@reedplate/tab';
 *
 * parseTimedTab("-2 r:1/2 -3':1.5 |").map(({ beats }) => beats); // => [1, 0.5, 1.5]
 * parseTimedTab('-2:0'); // throws TAB_SYNTAX
 * ```
 */
export function parseTimedTab(text: string, options: ParseTabOptions = {}): readonly TimedTab[] {
  requireOptions(options, PARSE_TAB_OPTIONS, 'parseTimedTab');
  const known = new Map<string, TimedTab>();
  const timed = Array.from(wordsOf(text), (word) => {
    const found = known.get(word.text) ?? parseTimedWord(word, options);
    known.set(word.text, found);
    return found;
  });
  // A text without a word is refused as one without a mark is.
  if (timed.length === 0) parseTab(text, options);
  return Object.freeze(timed);
}

function parseTimedWord({ text: word, place }: PlacedWord, options: ParseTabOptions): TimedTab {
  const { what: mark, beats } = readBeats(word);
  if (beats === undefined) {
    throw syntaxError(
      word,
      `a length above 0 and at most ${MOST_BEATS} beats, such as -2:3 or -2:1/2`,
      place,
    );
  }
  const marks = REST.test(mark) ? REST_MARKS : parseTabWord({ text: mark, place }, options);
  return Object.freeze({ marks, beats });
}

/** A word and its length. */
export interface WordWithLength {
  readonly what: string;
  /** Felt beats; undefined for a length that is none. */
  readonly beats: number | undefined;
}

/**
 * A word and the length behind its colon: `-2:1/2`; a word without one lasts a beat.
 *
 * @internal
 * @example
 * ```ts
 * import { readBeats } from '@reedplate/tab';
 *
 * readBeats('G7:3/2'); // => { what: 'G7', beats: 1.5 }
 * readBeats('G7').beats; // => 1
 * ```
 */
export function readBeats(word: string): WordWithLength {
  const [, what = word, upper = '1', lower = '1'] = LENGTH.exec(word) ?? [];
  const beats = Number(upper) / Number(lower);
  return { what, beats: beats > 0 && beats <= MOST_BEATS ? beats : undefined };
}

function syntaxError(value: string, expected: string, where: TextPlace): ReedplateError {
  return new ReedplateError({ code: 'TAB_SYNTAX', value, expected, where });
}

/**
 * Writes tablature with rhythm: the inverse of {@link parseTimedTab}, for lengths of whole ticks in
 * any metre.
 *
 * @throws ReedplateError `OPTION_UNKNOWN`
 * @example
 * ```ts
 * import { formatTimedTab, parseTimedTab } from '@reedplate/tab';
 *
 * formatTimedTab(parseTimedTab('-2 r:0.5 +4:1/3'), { dialect: 'blow-draw' }); // => '2D r:1/2 4B:1/3'
 * ```
 */
export function formatTimedTab(timed: readonly TimedTab[], options: TabOptions = {}): string {
  requireOptions(options, TAB_OPTIONS, 'formatTimedTab');
  return requireTimed(timed)
    .map(({ marks, beats }) => {
      const what = marks.length === 0 ? 'r' : formatTab([marks], options);
      return withBeats(what, beats);
    })
    .join(' ');
}

/**
 * The list itself, if it is tablature with rhythm.
 *
 * @throws ReedplateError `TAB_SYNTAX`
 */
export function requireTimed(timed: readonly TimedTab[]): readonly TimedTab[] {
  const words = { what: 'a list as parseTimedTab gives it', code: 'TAB_SYNTAX' } as const;
  requireShape({ timed }, { timed: 'list' }, words);
  for (const [at, each] of timed.entries()) {
    const path = `[${at}]`;
    const { beats } = requireShape(each, { marks: 'list' }, { ...words, path });
    const bounds = { max: MOST_BEATS, what: 'felt beats', code: words.code };
    requirePositive(beats, { ...bounds, where: { path } });
  }
  return timed;
}

/**
 * A word with its length behind a colon, which is left out for one beat: the inverse of
 * {@link readBeats}.
 *
 * @internal
 * @example
 * ```ts
 * import { withBeats } from '@reedplate/tab';
 *
 * withBeats('G7', 1.5); // => 'G7:3/2'
 * withBeats('G7', 1); // => 'G7'
 * ```
 */
export function withBeats(word: string, beats: number): string {
  return beats === 1 ? word : `${word}:${writeBeats(beats)}`;
}

/** Parts of a beat that a tick is a whole number of, in every metre: a beat has 240 to 3840 ticks. */
const PARTS = 11_520;

function writeBeats(beats: number): string {
  const parts = Math.max(1, Math.round(beats * PARTS));
  const divisor = commonDivisor(parts, PARTS);
  const lower = PARTS / divisor;
  return lower === 1 ? `${parts / divisor}` : `${parts / divisor}/${lower}`;
}

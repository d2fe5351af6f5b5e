import {
  isReedplateError,
  itemAt,
  type OptionNames,
  type ReedplateError,
  requireOptions,
} from '@reedplate/pitch';
import { TAB_DIALECT_IDS, type TabDialectId } from './dialects.js';
import { type ParseTabOptions, parseTab, type TextPlace } from './parse-tab.js';
import type { TabEvent, TabMark } from './tab-mark.js';

/** One way to read a text. */
export interface TabReading {
  readonly dialect: TabDialectId;
  readonly events: readonly TabEvent[];
}

/** Which dialect a text is written in. */
export interface TabGuess extends TabReading {
  /** Whether another dialect reads the text too, and otherwise. */
  readonly ambiguous: boolean;
  /** The other readings, each unlike the first and those before it. */
  readonly others: readonly TabReading[];
  /** What would settle it, for people; empty where nothing is open. */
  readonly question: string;
}

const DETECT_OPTIONS: OptionNames<Pick<ParseTabOptions, 'holes'>> = { holes: true };

/**
 * Finds the dialect of a text: the first of the catalogue that reads all of it. Where others read it
 * otherwise, as plain numbers may be blows or draws, the guess says so and gives their readings.
 *
 * @param options `holes` of the harp, default 10, settles whether `12` is a hole or a chord
 * @throws ReedplateError `TAB_SYNTAX` where no dialect reads it, with the place that the dialect which
 *   came farthest could not read; `NUMBER_RANGE`
 * @example
 * ```ts
 * import { detectTab } from '@reedplate/tab';
 *
 * detectTab('4↑ 4↓').dialect; // => 'arrows'
 * detectTab('+4 -4').ambiguous; // => false
 * detectTab('4 5 6').question; // => 'are plain numbers blow (plus-minus) or draw (plus-only)?'
 * detectTab('4? 5'); // throws TAB_SYNTAX
 * ```
 */
export function detectTab(text: string, options: Pick<ParseTabOptions, 'holes'> = {}): TabGuess {
  const { holes = 10 } = requireOptions(options, DETECT_OPTIONS, 'detectTab');
  const attempts = TAB_DIALECT_IDS.map((dialect) => attempt(text, dialect, holes));
  const readings = attempts.filter((each): each is TabReading => 'events' in each);
  const [first] = readings;
  if (first === undefined) throw farthest(attempts as readonly ReedplateError[]);
  const others = unlike(readings);
  return Object.freeze({
    ...first,
    ambiguous: others.length > 0,
    others,
    question: others.length === 0 ? '' : ask(first, others),
  });
}

function attempt(text: string, dialect: TabDialectId, holes: number): TabReading | ReedplateError {
  try {
    return Object.freeze({ dialect, events: parseTab(text, { dialect, holes }) });
  } catch (error) {
    if (!isReedplateError(error) || error.code !== 'TAB_SYNTAX') throw error;
    return error;
  }
}

/** The readings that differ from all before them. */
function unlike(readings: readonly TabReading[]): readonly TabReading[] {
  const fresh: TabReading[] = [];
  for (const reading of readings) {
    if (!fresh.some(({ events }) => areSame(events, reading.events))) fresh.push(reading);
  }
  return Object.freeze(fresh.slice(1));
}

function areSame(some: readonly TabEvent[], others: readonly TabEvent[]): boolean {
  return some.length === others.length && some.every((event, at) => isSame(event, others[at]));
}

function isSame(event: TabEvent, other: TabEvent = []): boolean {
  const isSameMark = ({ hole, breath, bend, over }: TabMark, at: number): boolean => {
    const mark = itemAt(other, at);
    const isSameReed = mark.hole === hole && mark.breath === breath;
    return isSameReed && mark.bend === bend && mark.over === over;
  };
  return event.length === other.length && event.every(isSameMark);
}

/** Readings differ where a number stands plain, which is a blow in one dialect and a draw in the other. */
function ask(first: TabReading, others: readonly TabReading[]): string {
  const other = itemAt(others, 0);
  const breathsOf = ({ events }: TabReading) => events.flat().map(({ breath }) => breath);
  const [breaths, otherBreaths] = [breathsOf(first), breathsOf(other)];
  const at = breaths.findIndex((breath, index) => breath !== otherBreaths[index]);
  return `are plain numbers ${breaths[at]} (${first.dialect}) or ${otherBreaths[at]} (${other.dialect})?`;
}

function farthest(errors: readonly ReedplateError[]): ReedplateError {
  const [first, ...rest] = errors as readonly [ReedplateError, ...ReedplateError[]];
  return rest.reduce((best, error) => (comesAfter(error, best) ? error : best), first);
}

/** Every error of the syntax of tab says where it stands. */
function comesAfter(one: ReedplateError, other: ReedplateError): boolean {
  const [a, b] = [one.where as TextPlace, other.where as TextPlace];
  return a.line > b.line || (a.line === b.line && a.column > b.column);
}

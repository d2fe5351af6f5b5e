import { requireOneOf, requireShape } from '@reedplate/pitch';
import { barsInWords, countInWords, suggestionInWords } from './in-words.js';
import { placeInWords } from './place-in-words.js';
import type { Feedback, FeedbackCode } from './score-types.js';

/**
 * The remark of feedback: its sentence in English. Feedback itself is data, so that an application can say it in another
 * language: its `code` says what happened, the other fields where and what to play instead.
 *
 * One place is said as players say it: `beat 2` up to an eighth of a beat late, then `just after
 * beat 2`, `the and of 2` (an eighth, swung or not) and `the end of beat 2`; several are said by bar.
 *
 * @example
 * ```ts
 * import { describeFeedback, scoreLine } from '@reedplate/chord-tone';
 * import { makeChart } from '@reedplate/form';
 * import { makeHarp } from '@reedplate/layout';
 * import { makeLine } from '@reedplate/line';
 *
 * const chart = makeChart('basic', 'G');
 * const tonic = makeLine(chart.spans.map(({ start }) => ({ start, duration: 1920, pitch: 67 })));
 * const [first] = scoreLine(tonic, chart, { harp: makeHarp('C') }).feedback;
 * first && describeFeedback(first); // => 'bars 5, 6, 9, 10 and 12: you stay on one chord while the chords move; over C7 play C5, the root (+4), over D7 play D5, the root (-4)'
 * ```
 */
export function describeFeedback(feedback: Feedback): string {
  const words = { what: 'feedback of a score', code: 'OPTION_UNKNOWN' } as const;
  const { code } = requireShape(feedback, { bars: 'list', suggestions: 'list' }, words);
  const codes = Object.keys(SENTENCES) as FeedbackCode[];
  return SENTENCES[requireOneOf(code, codes, { what: 'the code of feedback' })](feedback);
}

const SENTENCES: Readonly<Record<FeedbackCode, (remark: Feedback) => string>> = {
  TAKE_OTHER_HARP: ({ by, otherHarp }) =>
    `everything lies ${countInWords(Math.abs(by ?? 0), 'semitone')} too ${(by ?? 0) > 0 ? 'high' : 'low'}${otherHarp === null ? '' : `, as on the ${otherHarp.held} harp: take the ${otherHarp.take} harp, where the same holes are right`}`,
  TAKE_BARS_LATE: ({ by }) =>
    `everything comes ${countInWords(by ?? 1, 'bar')} late: begin where the chart does`,
  TAKE_BARS_EARLY: ({ by }) =>
    `everything comes ${countInWords(by ?? 1, 'bar')} early: wait for the chart to begin`,
  TAKE_BEATS_LATE: ({ by }) =>
    `everything comes ${countInWords(by ?? 1, 'beat')} late: count in to the first beat`,
  TAKE_BEATS_EARLY: ({ by }) =>
    `everything comes ${countInWords(by ?? 1, 'beat')} early: count in to the first beat`,
  STAYS_ON_ONE_CHORD: (remark) =>
    `${barsInWords(remark.bars)}: you stay on one chord while the chords move${cures(remark)}`,
  CHORD_MISSED: (remark) =>
    `${barsInWords(remark.bars)}: ${remark.chord ?? 'one chord'} is played as if the first chord went on${cures(remark)}`,
  BARS_NOT_PLAYED: ({ bars }) => `${barsInWords(bars)}: nothing is played; they count as missed`,
  NOTES_OUTSIDE_CHART: ({ count }) =>
    `${countInWords(count, 'note')} with no chord to judge by: left out`,
  LITTLE_TO_JUDGE: ({ count }) =>
    `only ${countInWords(count, 'note')} to judge by: the total may be luck`,
  TIME_LOOSE: () => 'the notes lie loosely around the beat: practise with a click',
  TIME_BEHIND: ({ bars }) => `${orAll(bars)}: behind the beat; play a little sooner`,
  TIME_AHEAD: ({ bars }) => `${orAll(bars)}: ahead of the beat; wait for it`,
  TIME_RUSHES: () => 'you rush: the end comes earlier than the beginning; practise with a click',
  TIME_DRAGS: () => 'you drag: the end comes later than the beginning; practise with a click',
  SWING_STIFF: ({ by }) => `the swing is stiff, ${by} to 1: lengthen the first of each two eighths`,
  SWING_WIDE: ({ by }) => `the swing is wide, ${by} to 1: even the eighths a little`,
  NOTE_KEPT: (remark) =>
    `${places(remark)}: you kept ${remark.name} over ${remark.chord}${tryOf(remark)}`,
  LANDED_OUTSIDE: (remark) =>
    `${places(remark)}: ${remark.name} lands outside ${remark.chord}${tryOf(remark)}`,
  CLASH: (remark) =>
    `${places(remark)}: ${remark.name} clashes with ${remark.chord}${tryOf(remark)}`,
  UNRESOLVED: (remark) =>
    `${places(remark)}: ${remark.name} is outside ${remark.chord} and does not resolve${tryOf(remark)}`,
  CHANGE_NOT_SHOWN: (remark) =>
    `${places(remark)}: nothing played shows the change to ${remark.chord}${tryOf(remark)}`,
};

/** One place by its beat, several by their bars. */
function places({ bars, beat, count }: Feedback): string {
  return count === 1 ? placeInWords({ bar: bars[0] ?? 1, beat }) : barsInWords(bars);
}

function orAll(bars: readonly number[]): string {
  return bars.length === 0 ? 'throughout' : barsInWords(bars);
}

function tryOf({ suggestions }: Feedback): string {
  const [first] = suggestions;
  return first === undefined ? '' : `; try ${suggestionInWords(first)}`;
}

/** What to play over each chord: one needs no name. */
function cures({ suggestions, chord }: Feedback): string {
  const said = suggestions.map((one) =>
    chord === null
      ? `over ${one.chord} play ${suggestionInWords(one)}`
      : `play ${suggestionInWords(one)}`,
  );
  return said.length === 0 ? '' : `; ${said.join(', ')}`;
}

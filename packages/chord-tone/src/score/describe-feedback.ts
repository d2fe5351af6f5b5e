import type { ChordDegree } from '@reedplate/pitch';
import { placeInWords } from './place-in-words.js';
import type { Feedback, FeedbackCode, Suggestion } from './score-types.js';

/**
 * A remark in English. The remark itself is data, so that an application can say it in another
 * language: its `code` says what happened, the other fields where and what to play instead.
 *
 * The place is said as players say it: `beat 2` up to an eighth of a beat late, then `just after
 * beat 2`, `the and of 2` (an eighth, swung or not) and `the end of beat 2`; the exact beat is in the
 * data.
 *
 * @example
 * ```ts
 * import { describeFeedback, scoreLine } from '@reedplate/chord-tone';
 * import { makeChart } from '@reedplate/form';
 * import { makeHarp } from '@reedplate/layout';
 * import { makeLine } from '@reedplate/line';
 *
 * const chart = makeChart('basic', 'G');
 * const take = makeLine([{ start: 0, duration: 3840, pitch: 66 }]);
 * const [first] = scoreLine(take, chart, { harp: makeHarp('C') }).feedback;
 * first && describeFeedback(first); // => 'bar 1, beat 1: F#4 lands outside G7; try G4, the root (-2)'
 * ```
 */
export function describeFeedback(remark: Feedback): string {
  return SENTENCES[remark.code](remark);
}

const SENTENCES: Readonly<Record<FeedbackCode, (remark: Feedback) => string>> = {
  LANDED_OUTSIDE: (remark) =>
    `${placeInWords(remark)}: ${remark.name} lands outside ${remark.chord}${tryOf(remark)}`,
  CLASH: (remark) =>
    `${placeInWords(remark)}: ${remark.name} clashes with ${remark.chord}${tryOf(remark)}`,
  UNRESOLVED: (remark) =>
    `${placeInWords(remark)}: ${remark.name} is outside ${remark.chord} and does not resolve${tryOf(remark)}`,
  CHANGE_NOT_SHOWN: (remark) =>
    `${placeInWords(remark)}: nothing played shows the change to ${remark.chord}`,
  NOTES_OUTSIDE_CHART: ({ count }) => `${notes(count)} with no chord to judge by: left out`,
  BARS_NOT_PLAYED: ({ count }) =>
    `nothing played in ${count === 1 ? '1 bar' : `${count} bars`}: the total counts only in part`,
  LITTLE_TO_JUDGE: ({ count }) => `only ${notes(count)} to judge by: the total may be luck`,
};

function tryOf({ suggestion }: Feedback): string {
  return suggestion === null ? '' : `; try ${describeSuggestion(suggestion)}`;
}

function describeSuggestion({ name, degree, tab }: Suggestion): string {
  const tone = `${name}, the ${TONE_NAMES.get(degree) ?? degree}`;
  return tab === null ? tone : `${tone} (${tab})`;
}

/** What players call the tones that are suggested. */
const TONE_NAMES: ReadonlyMap<ChordDegree, string> = new Map([
  ['1', 'root'],
  ['b3', 'flat third'],
  ['3', 'third'],
  ['b7', 'flat seventh'],
  ['7', 'major seventh'],
]);

function notes(count: number): string {
  return count === 1 ? '1 note' : `${count} notes`;
}

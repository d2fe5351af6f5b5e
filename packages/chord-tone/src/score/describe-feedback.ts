import type { Feedback, FeedbackCode, Suggestion } from './score-types.js';

/**
 * A remark in English. The remark itself is data, so that an application can say it in another
 * language: its `code` says what happened, the other fields where and what to play instead.
 *
 * @example
 * ```ts
 * import { describeFeedback, scoreLine } from '@reedplate/chord-tone';
 * import { formById, makeChart } from '@reedplate/form';
 * import { makeHarp } from '@reedplate/layout';
 * import { makeLine } from '@reedplate/line';
 *
 * const chart = makeChart(formById('basic'), { key: 'G' });
 * const take = makeLine([{ start: 0, duration: 3840, pitch: 66 }]);
 * const [first] = scoreLine(take, chart, { harp: makeHarp('C') }).feedback;
 * first && describeFeedback(first); // => 'bar 1, beat 1: F#4 lands outside G7; try G4 (1, -2)'
 * ```
 */
export function describeFeedback(remark: Feedback): string {
  return SENTENCES[remark.code](remark);
}

const SENTENCES: Readonly<Record<FeedbackCode, (remark: Feedback) => string>> = {
  LANDED_OUTSIDE: (remark) =>
    `${placeOf(remark)}: ${remark.name} lands outside ${remark.chord}${tryOf(remark)}`,
  CLASH: (remark) =>
    `${placeOf(remark)}: ${remark.name} clashes with ${remark.chord}${tryOf(remark)}`,
  UNRESOLVED: (remark) =>
    `${placeOf(remark)}: ${remark.name} is outside ${remark.chord} and does not resolve${tryOf(remark)}`,
  CHANGE_NOT_SHOWN: (remark) =>
    `${placeOf(remark)}: nothing played shows the change to ${remark.chord}`,
  NOTES_OUTSIDE_CHART: ({ count }) => `${notes(count)} with no chord to judge by: left out`,
  BARS_NOT_PLAYED: ({ count }) =>
    `nothing played in ${count === 1 ? '1 bar' : `${count} bars`}: the total counts only in part`,
  LITTLE_TO_JUDGE: ({ count }) => `only ${notes(count)} to judge by: the total may be luck`,
};

function placeOf({ bar, beat }: Feedback): string {
  return `bar ${bar}, beat ${Math.round(beat * 100) / 100}`;
}

function tryOf({ suggestion }: Feedback): string {
  return suggestion === null ? '' : `; try ${describeSuggestion(suggestion)}`;
}

function describeSuggestion({ name, degree, tab }: Suggestion): string {
  return `${name} (${tab === null ? degree : `${degree}, ${tab}`})`;
}

function notes(count: number): string {
  return count === 1 ? '1 note' : `${count} notes`;
}

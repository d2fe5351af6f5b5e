import type { Chart } from '@reedplate/form';
import type { Fault } from './faults.js';
import { remarksOnNotes } from './feedback-notes.js';
import { remarksOnTime } from './feedback-time.js';
import { remarkOnFault, remarksOnSilence } from './feedback-whole.js';
import type { ScoringGrid } from './grid.js';
import type { Judged } from './judge.js';
import type { Spellings } from './notes.js';
import type { OtherHarp } from './other-harp.js';
import type { ChangeScore, Feedback } from './score-types.js';
import type { Suggest } from './suggest.js';
import type { TakeTiming } from './timing.js';

/** What the remarks are drawn from. */
export interface FeedbackInput {
  readonly judged: readonly Judged[];
  readonly changes: readonly ChangeScore[];
  readonly grid: ScoringGrid;
  readonly spellings: Spellings;
  readonly suggest: Suggest;
  readonly fault: Fault | null;
  readonly otherHarp: OtherHarp | null;
  readonly timing: TakeTiming;
  readonly feel: Chart['feel'];
  readonly silentBars: readonly number[];
  /** Their share, 0 to 1. */
  readonly silent: number;
  /** How many notes were judged by a chord. */
  readonly struck: number;
  /** How many notes were judged by no chord. */
  readonly outside: number;
}

/** More remarks than this at once are no help. Design choice. */
export const MOST_REMARKS = 5;

/** Remarks on a scored line: on the whole take first, then on its time, then on notes by what they cost. */
export function feedbackOn(input: FeedbackInput): readonly Feedback[] {
  const { fault } = input;
  const whole = fault === null ? [] : [remarkOnFault(fault, input)];
  const remarks = [
    ...whole,
    ...remarksOnSilence(input),
    ...remarksOnTime(input),
    ...remarksOnNotes(input),
  ];
  return Object.freeze(remarks.slice(0, MOST_REMARKS));
}

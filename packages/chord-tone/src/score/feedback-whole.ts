import { toPitchClass } from '@reedplate/pitch';
import { timeOfChords } from './chance.js';
import type { ChordTable } from './chord-table.js';
import type { Fault } from './faults.js';
import type { FeedbackInput } from './feedback.js';
import type { Judged } from './judge.js';
import { remark } from './remark.js';
import type { ChordSuggestion, Feedback } from './score-types.js';

/** Most chords that one remark tells a cure for. */
const MOST_CURES = 3;

/** The remark on a fault of the whole take, with a cure for each chord that was missed. */
export function remarkOnFault(fault: Fault, input: FeedbackInput): Feedback {
  const missed = chordsMissed(fault, input);
  return remark(fault.code, {
    by: fault.by,
    otherHarp: input.otherHarp,
    bars: barsOf(missed, input),
    chord: missed.length === 1 ? (missed[0]?.chord?.symbol ?? null) : null,
    count: missed.length,
    suggestions: missed.slice(0, MOST_CURES).flatMap((table) => cureFor(table, input)),
  });
}

/** The chords that a fault passes over, the one that sounds longest first. */
export function chordsMissed(
  { code, by }: Fault,
  { grid }: Pick<FeedbackInput, 'grid'>,
): readonly ChordTable[] {
  if (code !== 'STAYS_ON_ONE_CHORD' && code !== 'CHORD_MISSED') return [];
  const above = ({ root }: ChordTable): number => toPitchClass(root - grid.key.pitchClass);
  return [...timeOfChords(grid)]
    .filter(([table]) => (code === 'CHORD_MISSED' ? above(table) === by : above(table) !== 0))
    .sort(([, one], [, other]) => other - one)
    .map(([table]) => table);
}

/** The bars in which chords sound. */
function barsOf(
  missed: readonly ChordTable[],
  { grid: { changes, pickup, barTicks } }: FeedbackInput,
): readonly number[] {
  const bars = new Set<number>();
  for (const { table, start, end } of changes) {
    if (!missed.includes(table)) continue;
    const past = Math.ceil((end - pickup) / barTicks);
    for (let bar = Math.floor((start - pickup) / barTicks); bar < past; bar += 1) bars.add(bar + 1);
  }
  return [...bars];
}

function cureFor(
  table: ChordTable,
  { judged, suggest }: FeedbackInput,
): readonly ChordSuggestion[] {
  const { chord } = table;
  if (chord === null) return [];
  const from = judged.find(({ part }) => part.table === table) ?? (judged[0] as Judged);
  const suggestion = suggest(chord, from.part.note.pitch);
  return suggestion === null ? [] : [Object.freeze({ ...suggestion, chord: chord.symbol })];
}

/** Fewer notes than this, the score says, are little to judge by. Design choice. */
const LITTLE = 23;

/** Share of silent bars that is worth a remark. Design choice. */
const WORTH_A_REMARK = 0.1;

/** Remarks on what was not played, and on what could not be judged. */
export function remarksOnSilence(input: FeedbackInput): readonly Feedback[] {
  const { silentBars, silent, outside, struck, fault } = input;
  return [
    ...(silent >= WORTH_A_REMARK
      ? [remark('BARS_NOT_PLAYED', { bars: silentBars, count: silentBars.length })]
      : []),
    ...(outside > 0 ? [remark('NOTES_OUTSIDE_CHART', { count: outside })] : []),
    ...(struck < LITTLE && fault === null ? [remark('LITTLE_TO_JUDGE', { count: struck })] : []),
  ];
}

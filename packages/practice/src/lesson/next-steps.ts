import { requireScores, type Score } from '@reedplate/chord-tone';
import { deepFreeze, type OptionNames, requireOptions, requireSome } from '@reedplate/pitch';
import type { ExerciseKind } from '../exercise/exercise-table.js';

/** What a step answers. */
export type NextStepReason =
  | 'stays-on-one-chord'
  | 'silent-changes'
  | 'weak-change'
  | 'changes-not-shown'
  | 'unresolved'
  | 'late'
  | 'early'
  | 'loose-time'
  | 'flat-bends'
  | 'sharp-bends'
  | 'ready-for-more';

/** What to practise next, and why. */
export interface NextStep {
  readonly reason: NextStepReason;
  /** The exercise that answers it; null where a faster tempo or another form does. */
  readonly exercise: ExerciseKind | null;
  /** Bars it is about, each once; empty for the whole. */
  readonly bars: readonly number[];
  /** The chord that is landed on badly, or the bend, as tab; null where none is meant. */
  readonly about: string | null;
  readonly words: string;
}

/** A bend as it was held: its tab, and how many cents it lay off on the average. */
export interface HeldBend {
  readonly tab: string;
  readonly cents: number;
}

/** What {@link nextSteps} knows besides scores. */
export interface NextStepsOptions {
  /** Bends of the student's takes; default unknown. */
  readonly bends?: readonly HeldBend[];
}

const OPTIONS: OptionNames<NextStepsOptions> = { bends: true };

/** Below these a measure is worth a step. Design choice. */
const WEAK = { landing: 0.6, coverage: 0.6, resolution: 0.5, cents: 15 };
const LATE_CODES: ReadonlySet<string> = new Set(['TIME_BEHIND', 'TIME_DRAGS']);
const EARLY_CODES: ReadonlySet<string> = new Set(['TIME_AHEAD', 'TIME_RUSHES']);

/**
 * What to practise next after one take or several: the faults first, then the weakest change, then what the
 * measures say; where nothing is weak, a step further. At most five.
 *
 * @throws ReedplateError `LIST_EMPTY` without a score, `OPTION_UNKNOWN`
 * @example
 * ```ts
 * import { scoreLine } from '@reedplate/chord-tone';
 * import { makeChart } from '@reedplate/form';
 * import { makeLine } from '@reedplate/line';
 * import { nextSteps } from '@reedplate/practice';
 *
 * const chart = makeChart('basic', 'G');
 * const tonic = chart.spans.map(({ start }) => ({ start, duration: 1920, pitch: 67 }));
 * nextSteps([scoreLine(makeLine(tonic), chart)])[0]?.reason; // => 'stays-on-one-chord'
 * nextSteps([]); // throws LIST_EMPTY
 * ```
 */
export function nextSteps(
  scores: readonly Score[],
  options: NextStepsOptions = {},
): readonly NextStep[] {
  const { bends = [] } = requireOptions(options, OPTIONS, 'nextSteps');
  requireScores(requireSome(scores, 'one score'));
  const steps = [
    ...staysOnOne(scores),
    ...silentChanges(scores),
    ...weakChange(scores),
    ...ofTime(scores),
    ...bends.flatMap(ofBend),
    ...ofMeasures(scores),
  ];
  return deepFreeze((steps.length > 0 ? steps : [READY]).slice(0, 5));
}

const READY: NextStep = {
  reason: 'ready-for-more',
  exercise: null,
  bars: [],
  about: null,
  words: 'Nothing is weak: take the next tempo of the ladder, or a form with more changes.',
};

function staysOnOne(scores: readonly Score[]): readonly NextStep[] {
  if (!scores.some(({ fault }) => fault?.code === 'STAYS_ON_ONE_CHORD')) return [];
  return [
    {
      reason: 'stays-on-one-chord',
      exercise: 'roots-in-time',
      bars: [],
      about: null,
      words: 'The line stays on one chord: play the root of each chord as it comes, nothing else.',
    },
  ];
}

/** Who rests through most of the changes lands on none of them badly, and is not ready for more. */
function silentChanges(scores: readonly Score[]): readonly NextStep[] {
  const changes = scores.flatMap((score) => score.changes);
  const silent = changes.filter(({ landing }) => landing === null);
  if (2 * silent.length <= changes.length) return [];
  const bars = barsOf(silent);
  return [
    {
      reason: 'silent-changes',
      exercise: 'roots-in-time',
      bars,
      about: null,
      words: `Most changes pass in silence${sayBars(bars)}: play the root of each chord as it comes.`,
    },
  ];
}

/** The chord that is landed on worst, over all takes. */
function weakChange(scores: readonly Score[]): readonly NextStep[] {
  const byChord = new Map<string, { sum: number; count: number; bars: Set<number> }>();
  for (const { chord, landing, bar } of scores.flatMap(({ changes }) => changes)) {
    if (landing === null) continue;
    const known = byChord.get(chord) ?? { sum: 0, count: 0, bars: new Set<number>() };
    known.sum += landing;
    known.count += 1;
    known.bars.add(bar);
    byChord.set(chord, known);
  }
  const means = [...byChord].map(([chord, { sum, count, bars }]) => ({
    chord,
    mean: sum / count,
    bars,
  }));
  const worst = means.sort((a, b) => a.mean - b.mean)[0];
  if (worst === undefined || worst.mean >= WEAK.landing) return [];
  const bars = [...worst.bars].sort((a, b) => a - b);
  return [
    {
      reason: 'weak-change',
      exercise: 'thirds',
      bars,
      about: worst.chord,
      words: `The change to ${worst.chord} is the weakest${sayBars(bars)}: loop it from the bar before, landing on its root, then on its third.`,
    },
  ];
}

function ofTime(scores: readonly Score[]): readonly NextStep[] {
  const codes = scores.flatMap(({ feedback }) => feedback);
  const step = (
    reason: NextStepReason,
    has: (code: string) => boolean,
    words: string,
  ): NextStep[] => {
    const found = codes.filter(({ code }) => has(code));
    const bars = [...new Set(found.flatMap((each) => each.bars))].sort((a, b) => a - b);
    return found.length === 0
      ? []
      : [{ reason, exercise: 'roots-in-time', bars, about: null, words }];
  };
  return [
    ...step(
      'late',
      (code) => LATE_CODES.has(code),
      'Landings come late: breathe earlier, and play one tempo slower.',
    ),
    ...step(
      'early',
      (code) => EARLY_CODES.has(code),
      'Landings come early: count the rests aloud, one tempo slower.',
    ),
    ...step(
      'loose-time',
      (code) => code === 'TIME_LOOSE',
      'The time is loose: clap the rhythm before you play it.',
    ),
  ];
}

function ofBend({ tab, cents }: HeldBend): readonly NextStep[] {
  if (!(Math.abs(cents) >= WEAK.cents)) return [];
  // A bend that is not deep enough sounds sharp.
  const isFlat = cents < 0;
  const off = `${Math.abs(Math.round(cents))} cents ${isFlat ? 'flat' : 'sharp'}`;
  return [
    {
      reason: isFlat ? 'flat-bends' : 'sharp-bends',
      exercise: 'bend-drill',
      bars: [],
      about: tab,
      words: `The bend ${tab} lies ${off}: hold it against its pitch, ${isFlat ? 'less' : 'more'} deep.`,
    },
  ];
}

function ofMeasures(scores: readonly Score[]): readonly NextStep[] {
  const coverage = meanOf(scores.map(({ measures }) => measures.coverage));
  const resolution = meanOf(scores.map(({ measures }) => measures.resolution));
  const hidden = barsOf(
    scores.flatMap(({ changes }) => changes.filter(({ shown }) => shown === false)),
  );
  const hanging = barsOf(
    scores.flatMap(({ notes }) => notes.filter((note) => note.class === 'unresolved')),
  );
  return [
    ...(coverage < WEAK.coverage
      ? [
          {
            reason: 'changes-not-shown' as const,
            exercise: 'thirds-and-sevenths' as const,
            bars: hidden,
            about: null,
            words: `The changes are not heard in the line${sayBars(hidden)}: play thirds and sevenths alone for a chorus.`,
          },
        ]
      : []),
    ...(resolution < WEAK.resolution
      ? [
          {
            reason: 'unresolved' as const,
            exercise: 'approach-notes' as const,
            bars: hanging,
            about: null,
            words: `Notes outside the chord are left hanging${sayBars(hanging)}: lead each by a step into a tone of the chord.`,
          },
        ]
      : []),
  ];
}

/** The mean of what was measured; 1, which is not weak, where nothing was. */
function meanOf(values: readonly (number | null)[]): number {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? 1 : known.reduce((sum, value) => sum + value, 0) / known.length;
}

/** Bars, each once, in order. */
function barsOf(places: readonly { readonly bar: number }[]): readonly number[] {
  return [...new Set(places.map(({ bar }) => bar))].sort((a, b) => a - b);
}

function sayBars(bars: readonly number[]): string {
  if (bars.length === 0) return '';
  return ` (${bars.length === 1 ? 'bar' : 'bars'} ${bars.join(', ')})`;
}

import { requireScores } from './require-scores.js';
import type { FeedbackCode, Score } from './score-types.js';

/** What changed from one take to the next. */
export interface TakeProgress {
  readonly total: number;
  /** By how much the total is more than that of the take before; null for the first. */
  readonly gain: number | null;
  /** Bars that fit better by a fifth or more, and worse; none for the first take. */
  readonly betterBars: readonly number[];
  readonly worseBars: readonly number[];
  /** What was remarked on before and is not now, and the other way round. */
  readonly mended: readonly FeedbackCode[];
  readonly fresh: readonly FeedbackCode[];
}

/** Several takes over one chart, and how they get better. */
export interface ProgressReport {
  /** In the order in which they were played. */
  readonly takes: readonly Score[];
  /** What changed from each to the next. */
  readonly progress: readonly TakeProgress[];
}

/** Change of the chord fit of a bar that is worth a word. Design choice. */
const NOTICED = 0.2;

/**
 * How takes over one chart get better, in the order in which they were played.
 *
 * @example
 * ```ts
 * import { progressOf, scoreLine } from '@reedplate/chord-tone';
 * import { makeChart } from '@reedplate/form';
 * import { makeLine } from '@reedplate/line';
 *
 * const chart = makeChart('basic', 'G');
 * const notes = chart.spans.map(({ start, chord }) => ({ start, duration: 1920, pitch: chord?.root === 'C' ? 72 : chord?.root === 'D' ? 74 : 67 }));
 * const tonic = makeLine(notes.map((note) => ({ ...note, pitch: 67 })));
 * const takes = [scoreLine(tonic, chart), scoreLine(makeLine(notes), chart)];
 * const [, second] = progressOf(takes).progress;
 * second?.mended; // => ['STAYS_ON_ONE_CHORD']
 * second?.betterBars; // => [9, 12]
 * ```
 */
export function progressOf(scores: readonly Score[]): ProgressReport {
  requireScores(scores);
  const progress = scores.map((score, at) => progressFrom(scores[at - 1], score));
  return Object.freeze({ takes: Object.freeze([...scores]), progress: Object.freeze(progress) });
}

function progressFrom(before: Score | undefined, score: Score): TakeProgress {
  const { total } = score;
  if (before === undefined) {
    return Object.freeze({
      total,
      gain: null,
      betterBars: NONE,
      worseBars: NONE,
      mended: NONE,
      fresh: NONE,
    });
  }
  return Object.freeze({
    total,
    gain: total - before.total,
    betterBars: barsChanged(before, score, 1),
    worseBars: barsChanged(before, score, -1),
    mended: codesOnlyIn(before, score),
    fresh: codesOnlyIn(score, before),
  });
}

const NONE: readonly never[] = Object.freeze([]);

/** Bars whose chord fit rose (1) or fell (−1). */
function barsChanged(before: Score, score: Score, way: 1 | -1): readonly number[] {
  const changed = score.bars.filter(({ chordFit }, at) => {
    const was = before.bars[at]?.chordFit ?? null;
    return was !== null && chordFit !== null && way * (chordFit - was) >= NOTICED;
  });
  return Object.freeze(changed.map(({ bar }) => bar));
}

function codesOnlyIn(one: Score, other: Score): readonly FeedbackCode[] {
  const known = new Set(other.feedback.map(({ code }) => code));
  const codes = one.feedback.map(({ code }) => code).filter((code) => !known.has(code));
  return Object.freeze([...new Set(codes)]);
}

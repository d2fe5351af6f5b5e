import type { Chart } from '@reedplate/form';
import { toHarp } from '@reedplate/layout';
import type { Line } from '@reedplate/line';
import { type OptionNames, requireOneOf, requireOptions } from '@reedplate/pitch';
import { checkChart } from '../check-chart.js';
import { PLAYING_STYLES, type PlayingStyle, styleOfKey } from '../styles.js';
import { scoreBars } from './bars.js';
import type { FitsOn } from './chance.js';
import { scoreChanges } from './changes.js';
import { checkLine } from './check-line.js';
import { confidenceOf } from './confidence.js';
import { faultOf } from './faults.js';
import { feedbackOn } from './feedback.js';
import { followingOf } from './following.js';
import { fitOf, fitsOver, type Judged, judgeNotes } from './judge.js';
import { measureAll } from './measures.js';
import { noteScores, spellingsOf } from './notes.js';
import { otherHarpOf } from './other-harp.js';
import { barsPlayed } from './played.js';
import { type LayOptions, type PreparedTake, prepareTake } from './prepare-take.js';
import { readOtherwise } from './readings.js';
import { replaceWeights, type WeightChanges } from './replace-weights.js';
import type { Score } from './score-types.js';
import { type SuggestOptions, suggester } from './suggest.js';
import { timingOf } from './timing.js';
import { totalOf } from './total.js';
import { verdictOn } from './verdict.js';
import { SCORE_WEIGHTS, type ScoreWeights } from './weights.js';

/** How {@link scoreLine} judges. */
export interface ScoreOptions extends LayOptions, SuggestOptions {
  /** Default that of the chart's key: {@link styleOfKey}. */
  readonly style?: PlayingStyle;
  /** Parts of {@link SCORE_WEIGHTS} to replace, down to single figures; default none. */
  readonly weights?: WeightChanges;
  /** Whether the line was played on `harp` for certain, as tab is; default false. */
  readonly playedOnHarp?: boolean;
}

const SCORE_OPTIONS: OptionNames<ScoreOptions> = {
  latency: true,
  swing: true,
  countIn: true,
  bars: true,
  harp: true,
  playedOnHarp: true,
  level: true,
  dialect: true,
  style: true,
  weights: true,
};

/**
 * How well a line follows the changes of a chart: a verdict, a total, the measures it rests on, every
 * note with its class, every change, every bar, and feedback: at most five things to do next.
 *
 * The line's bar 1 is laid on the chart's bar 1, after a count-in that the line or an option gives. A
 * line longer than the chart goes round. Notes that sound where the chart has no chord are listed as
 * `unjudged` and do not count. Notes of one pitch that touch are one note.
 *
 * @throws ReedplateError `LINE_EMPTY`, `LINE_INVALID` (also for a metre other than the chart's),
 *   `CHART_INVALID`; `OPTION_UNKNOWN` for the style, level, dialect or a weight that does not exist;
 *   `NUMBER_RANGE` for a swing, latency, count-in, range of bars or weight out of range
 * @example
 * ```ts
 * import { scoreLine } from '@reedplate/chord-tone';
 * import { makeChart } from '@reedplate/form';
 * import { makeLine } from '@reedplate/line';
 *
 * const chart = makeChart('basic', 'G');
 * const roots = makeLine(
 *   chart.spans.map(({ start, chord }) => ({ start, duration: 1920, pitch: chord?.root === 'C' ? 72 : chord?.root === 'D' ? 74 : 67 })),
 * );
 * const score = scoreLine(roots, chart);
 * score.verdict.code; // => 'FOLLOWS_EVERY_CHANGE'
 * score.total; // => 100
 *
 * const tonic = makeLine(chart.spans.map(({ start }) => ({ start, duration: 1920, pitch: 67 })));
 * scoreLine(tonic, chart).verdict.code; // => 'STAYS_ON_ONE_CHORD'
 * scoreLine(makeLine([]), chart); // throws LINE_EMPTY
 * ```
 */
export function scoreLine(line: Line, chart: Chart, options: ScoreOptions = {}): Score {
  requireOptions(options, SCORE_OPTIONS, 'scoreLine');
  const checked = checkLine(line, checkChart(chart));
  const style = requireOneOf(options.style ?? styleOfKey(chart.key), PLAYING_STYLES, {
    what: 'a style',
  });
  const weights = options.weights === undefined ? SCORE_WEIGHTS : replaceWeights(options.weights);
  const suggest = suggester(options);
  const harp = options.harp === undefined ? undefined : toHarp(options.harp);
  const { pushWithin } = weights;
  const take = prepareTake(checked, chart, style, { ...options, pushWithin });
  const stages = judgeTake(take, weights);
  const otherHarp = otherHarpOf(stages.fault, chart, { ...options, harp });
  const judgement = { ...stages, otherHarp };
  const { chordFit, following, readings, fault, timing, silent, confidence } = judgement;
  const { grid, alignment } = take;
  const total = totalOf({ chordFit, following, readings, silent, loose: timing.loose }, weights);
  const spellings = spellingsOf(grid);
  return Object.freeze({
    title: line.title ?? null,
    form: chart.form,
    key: chart.key,
    harp: harp ?? null,
    verdict: verdictOn({ ...judgement, total }),
    total,
    played: 1 - silent,
    confidence,
    style,
    measures: measureAll({ ...judgement, grid, within: weights.resolveWithin * grid.beatTicks }),
    following,
    readings,
    fault,
    timing,
    notes: noteScores(judgement.judged, grid, spellings),
    changes: judgement.changes,
    bars: scoreBars(judgement.judged, take.chart, grid),
    feedback: feedbackOn({ ...judgement, grid, spellings, suggest, feel: chart.feel }),
    alignment,
  });
}

/** Every stage but the words: notes and changes judged, following, other readings, time, silence. */
function judgeTake({ grid, whole, notes, heard, alignment }: PreparedTake, weights: ScoreWeights) {
  const judged = judgeNotes(notes, grid, weights);
  const fitsOn: FitsOn = (grids) => fitsOver(notes, grids, weights);
  const chordFit = fitOf(judged);
  const readings = chordFit === null ? [] : readOtherwise(whole, chordFit, fitsOn);
  const silence = barsPlayed(notes, grid);
  const struck = countStruck(judged);
  return {
    judged,
    chordFit,
    changes: scoreChanges(judged, grid, weights),
    following: followingOf(judged, chordFit, grid, weights, fitsOn),
    readings: Object.freeze(readings),
    fault: chordFit === null ? null : faultOf(readings, chordFit, weightOf(judged)),
    timing: timingOf(notes, grid, alignment.swing),
    silentBars: silence.silent,
    silent: silence.of === 0 ? 0 : silence.silent.length / silence.of,
    struck,
    outside: Math.max(0, heard - struck),
    confidence: confidenceOf(struck, grid.tables.length),
  };
}

/** What all parts weigh together, in felt beats. */
function weightOf(judged: readonly Judged[]): number {
  return judged.reduce((sum, { weight }) => sum + weight, 0);
}

/** Struck notes that a chord judged. */
function countStruck(judged: readonly Judged[]): number {
  return judged.filter(({ part, class: noteClass }) => !part.held && noteClass !== 'unjudged')
    .length;
}

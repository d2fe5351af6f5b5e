import type { Chart } from '@reedplate/form';
import type { Line } from '@reedplate/line';
import { requireOneOf } from '@reedplate/pitch';
import { checkChart } from '../check-chart.js';
import { PLAYING_STYLES, type PlayingStyle, styleOfKey } from '../styles.js';
import { type AlignOptions, alignLine } from './align.js';
import { scoreBars } from './bars.js';
import { chanceFit } from './chance.js';
import { scoreChanges } from './changes.js';
import { checkLine } from './check-line.js';
import { confidenceOf } from './confidence.js';
import { feedbackOn } from './feedback.js';
import { compileChart } from './grid.js';
import { type Judged, judgePieces } from './judge.js';
import { measureAll } from './measures.js';
import { CLASS } from './note-class.js';
import { noteScores, spellingsOf } from './notes.js';
import { cutPieces } from './pieces.js';
import { barsPlayed, partPlayed } from './played.js';
import { replaceWeights, type WeightChanges } from './replace-weights.js';
import { joinTies, moveEarlier } from './runs.js';
import type { Score } from './score-types.js';
import { type SuggestOptions, suggester } from './suggest.js';
import { totalOf } from './total.js';
import { SCORE_WEIGHTS } from './weights.js';

/** How {@link scoreLine} judges. */
export interface ScoreOptions extends AlignOptions, SuggestOptions {
  /** Default that of the chart's key: {@link styleOfKey}. */
  readonly style?: PlayingStyle;
  /** Parts of {@link SCORE_WEIGHTS} to replace, down to single figures; default none. */
  readonly weights?: WeightChanges;
}

/**
 * How well a line follows the changes of a chart: a total, the measures it rests on, every note
 * with its class, every change, every bar, and remarks that say what to play instead.
 *
 * The line's bar 1 is laid on the chart's bar 1. Notes that sound where the chart has no chord are
 * listed as `unjudged`, notes past its end are left out; neither count, and a remark says how many
 * there are. Notes of one pitch that touch are one note. Where less than half of the chart is played,
 * the total counts only in proportion.
 *
 * @throws ReedplateError `LINE_EMPTY`, `LINE_INVALID` (also for a metre other than the chart's),
 *   `CHART_INVALID`; `OPTION_UNKNOWN` for the style, level, dialect or a weight that does not exist;
 *   `NUMBER_RANGE` for a swing, latency or weight out of range
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
 * score.measures.landing; // => 1
 * score.total; // => 100
 * scoreLine(makeLine([]), chart); // throws LINE_EMPTY
 * ```
 */
export function scoreLine(line: Line, chart: Chart, options: ScoreOptions = {}): Score {
  const checked = checkLine(line, checkChart(chart));
  const style = requireOneOf(options.style ?? styleOfKey(chart.key), PLAYING_STYLES, {
    what: 'a style',
  });
  const weights = options.weights === undefined ? SCORE_WEIGHTS : replaceWeights(options.weights);
  const grid = compileChart(chart, style);
  const { pickup } = checked;
  const asPlayed = joinTies(checked, chart.pickup - pickup);
  const alignment = alignLine(asPlayed, grid, options);
  const { swing } = alignment;

  const runs = moveEarlier(asPlayed, alignment.latency);
  const pieces = cutPieces(runs, grid, { pushWithin: weights.pushWithin, swing });
  const judged = judgePieces(runs, pieces, grid, weights);
  const changes = scoreChanges(judged, grid, weights);
  const measures = measureAll(judged, changes, grid, {
    swing,
    resolveWithin: weights.resolveWithin,
  });
  const chance = chanceFit(judged, grid, weights) ?? weights.typicalChance;
  const spellings = spellingsOf(grid);
  const notes = noteScores(judged, grid, spellings);
  const inside = countJudged(judged);
  const outside = runs.count - inside;
  const confidence = confidenceOf(inside);
  const played = barsPlayed(runs, grid);
  const part = partPlayed(played, weights.enoughPlayed);
  return Object.freeze({
    total: part * totalOf(measures, chance, weights),
    played: played.bars / played.of,
    chance:
      part * totalOf({ ...measures, fit: measures.fit === null ? null : chance }, chance, weights),
    confidence,
    style,
    measures,
    notes,
    changes,
    bars: scoreBars(judged, chart, grid),
    feedback: feedbackOn({
      line: checked,
      notes,
      changes,
      grid,
      spellings,
      suggest: suggester(options),
      confidence,
      inside,
      outside,
      barsMissed: part < 1 ? played.of - played.bars : 0,
    }),
    alignment,
  });
}

/** Struck notes that a chord judged. */
function countJudged({ pieces, runs, ...judged }: Judged): number {
  let count = 0;
  for (let run = 0; run < runs.count; run += 1) {
    const first = pieces.first[run] as number;
    if (first < (pieces.first[run + 1] as number) && judged.class[first] !== CLASS.unjudged) {
      count += 1;
    }
  }
  return count;
}

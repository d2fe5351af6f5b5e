import { checkChart, type Score } from '@reedplate/chord-tone';
import type { Chart } from '@reedplate/form';
import { type OptionNames, requireOptions, requireShape } from '@reedplate/pitch';
import { PICTURE_OPTIONS, type Picture, type PictureOptions } from '../picture.js';
import { type BarRange, requireBars } from '../require-bars.js';
import { type Frame, finishPicture, makeFrame } from '../svg/frame.js';
import { drawLegend, type LegendItem } from '../svg/legend.js';
import { element, type SvgNode } from '../svg/node.js';
import { roleOf } from '../theme/chord-role.js';
import type { ChordRole } from '../theme/theme.js';
import { MARK_WORDS, markOfClass, type NoteMark, noteMark } from './class-marks.js';
import { drawRow, type TakeLook } from './draw-take-bar.js';
import { LANDING_WORDS, type Landing, landingMark, landingOf } from './landing-marks.js';
import { type TakeBar, takeBarsOf } from './score-bars.js';
import { describeScore, scoreInText } from './score-in-words.js';
import { layScore } from './score-layout.js';

/** What {@link scorePicture} shows. */
export interface ScorePictureOptions extends PictureOptions {
  /** First and last bar to draw, from 0 for a pickup; default all that were judged. */
  readonly bars?: BarRange;
}

const SCORE_PICTURE_OPTIONS: OptionNames<ScorePictureOptions> = { ...PICTURE_OPTIONS, bars: true };

/**
 * A take over its chart: each note by pitch and time with the mark of its class and its degree, each
 * change by how it landed, each bar by how it went.
 *
 * @param score as `scoreLine` gives it
 * @param chart the chart that it was scored over
 * @throws ReedplateError `CHART_INVALID`, `OPTION_UNKNOWN`, also for what is no score,
 *   `NUMBER_RANGE` for bars that were not judged
 * @example
 * ```ts
 * import { scoreLine } from '@reedplate/chord-tone';
 * import { makeChart } from '@reedplate/form';
 * import { makeLine } from '@reedplate/line';
 * import { scorePicture } from '@reedplate/picture';
 *
 * const chart = makeChart('basic', 'G');
 * const take = makeLine([{ start: 0, duration: 1920, pitch: 67 }]);
 * const { text } = scorePicture(scoreLine(take, chart), chart);
 * text.split('\n')[2]; // => 'bar 1 (G7): 100 %; G7 lands on the chord; G4 1 root'
 * scorePicture(scoreLine(take, chart), chart, { bars: [90, 91] }); // throws NUMBER_RANGE
 * ```
 */
export function scorePicture(
  score: Score,
  chart: Chart,
  options: ScorePictureOptions = {},
): Picture {
  requireOptions(options, SCORE_PICTURE_OPTIONS, 'scorePicture');
  checkChart(chart);
  const lists = { notes: 'list', bars: 'list', changes: 'list' } as const;
  requireShape(score, { total: 'number', ...lists }, SCORE);
  const range = options.bars === undefined ? undefined : requireBars(options.bars);
  const bars = takeBarsOf(score, chart, range);
  const frame = makeFrame(options, `A take in ${chart.key}: ${Math.round(score.total)} of 100`);
  const pitches = bars.flatMap(({ notes }) => notes.map(({ note }) => note.pitch));
  const look: TakeLook = {
    frame,
    layout: layScore(frame, bars),
    roleOfChord: rolesOf(chart),
    range: [Math.min(...pitches, 127), Math.max(...pitches, 0)],
  };
  const nodes: SvgNode[] = [];
  let top = frame.top;
  for (const row of look.layout.rows) {
    const drawn = drawRow(row, look, top);
    nodes.push(...drawn.nodes);
    top = drawn.bottom + frame.theme.textSize * 0.5;
  }
  const legend = drawLegend(frame, legendOf(bars, frame), top);
  return finishPicture(frame, {
    description: describeScore(score),
    text: scoreInText(frame.title, score, bars),
    nodes: [...nodes, ...legend.nodes],
    bottom: legend.bottom,
  });
}

const SCORE = { what: 'a score, as scoreLine gives it', code: 'OPTION_UNKNOWN' } as const;

/** What the chords of a chart are in its key, by symbol. */
function rolesOf({ spans }: Chart): TakeLook['roleOfChord'] {
  const roles = new Map<string, ChordRole>();
  for (const { chord, numeral } of spans) {
    if (chord !== null) roles.set(chord.symbol, roleOf(numeral));
  }
  return (symbol) => roles.get(symbol ?? '') ?? 'other';
}

/** The marks that the picture has, in words. */
function legendOf(bars: readonly TakeBar[], { theme }: Frame): readonly LegendItem[] {
  const marks = new Set(
    bars.flatMap(({ notes }) => notes.map(({ note }) => markOfClass(note.class))),
  );
  const landings = new Set(
    bars.flatMap(({ changes }) => changes.map(({ change }) => landingOf(change))),
  );
  const shade = theme.chords.other;
  return [
    ...(Object.keys(MARK_WORDS) as NoteMark[])
      .filter((mark) => marks.has(mark))
      .map((mark) => ({
        label: MARK_WORDS[mark],
        sign: (x: number, y: number, radius: number) =>
          noteMark(mark, { x, y, radius }, { theme, shade }),
      })),
    ...(Object.keys(LANDING_WORDS) as Landing[])
      .filter((landing) => landings.has(landing))
      .map((landing) => ({
        label: LANDING_WORDS[landing],
        sign: (x: number, y: number, radius: number) =>
          element('g', {}, landingMark(landing, { x, y, radius }, theme)),
      })),
  ];
}

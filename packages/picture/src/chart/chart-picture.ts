import { checkChart } from '@reedplate/chord-tone';
import type { Chart } from '@reedplate/form';
import { type HarpLike, type PlayerLike, toHarp } from '@reedplate/layout';
import { type OptionNames, requireInteger, requireOneOf, requireOptions } from '@reedplate/pitch';
import { PICTURE_OPTIONS, type Picture, type PictureOptions } from '../picture.js';
import { type Frame, finishPicture, makeFrame } from '../svg/frame.js';
import { drawLegend, type LegendItem } from '../svg/legend.js';
import { shape } from '../svg/shapes.js';
import { roleOf } from '../theme/chord-role.js';
import type { ChordRole } from '../theme/theme.js';
import { toTheme } from '../theme/themes.js';
import { chartInText, chartTitle, describeChart } from './chart-in-words.js';
import { type ChartContent, type ChartReader, contentOf, sizesOf } from './chart-layout.js';
import { drawChart, ROLE_SHAPES } from './draw-chart.js';

const READERS: readonly ChartReader[] = ['student', 'band'];
/** What a chart is drawn for: a page or a screen; a slide of 16 to 9. */
export type ChartFormat = 'page' | 'slide';
const FORMATS: readonly ChartFormat[] = ['page', 'slide'];

/** What {@link chartPicture} shows. */
export interface ChartPictureOptions extends PictureOptions {
  /** Default `student`: numerals large; `band` has names large and signs for bars that stay. */
  readonly reader?: ChartReader;
  /** Default `page`; a `slide` is 16 to 9, 1920 pixels wide unless told, and reads from afar. */
  readonly format?: ChartFormat;
  /** The harp to show the holes of roots on, or its name; default none. */
  readonly harp?: HarpLike;
  /** What the player can do, for those holes; default `bends`. */
  readonly level?: PlayerLike;
  /** Bar of the chart that sounds, from 1, which is framed and pointed at; default none. */
  readonly sounding?: number;
}

const CHART_PICTURE_OPTIONS: OptionNames<ChartPictureOptions> = {
  ...PICTURE_OPTIONS,
  reader: true,
  format: true,
  harp: true,
  level: true,
  sounding: true,
};

/**
 * The bars of a chart as a grid: numerals and names, and on a harp the holes of the roots. Choruses
 * that are alike are drawn once, between repeat signs; a turnaround is underlined.
 *
 * @throws ReedplateError `HARP_INVALID`, `OPTION_UNKNOWN`, or `NUMBER_RANGE` for a width that does not
 *   hold it in readable text, or a bar that the chart does not have
 * @example
 * ```ts
 * import { makeChart } from '@reedplate/form';
 * import { chartPicture } from '@reedplate/picture';
 *
 * const chart = makeChart('basic', 'G');
 * const { text } = chartPicture(chart, { harp: 'C' });
 * text.split('\n')[1]; // => 'bars 1 to 4: I7 G7 [-2 +3] | I7 G7 [-2 +3] | I7 G7 [-2 +3] | I7 G7 [-2 +3]'
 * chartPicture(chart, { width: 20 }); // throws NUMBER_RANGE
 * ```
 */
export function chartPicture(chart: Chart, options: ChartPictureOptions = {}): Picture {
  requireOptions(options, CHART_PICTURE_OPTIONS, 'chartPicture');
  checkChart(chart);
  const { reader = 'student', format = 'page', level = 'bends' } = options;
  requireOneOf(reader, READERS, { what: 'a reader of a chart' });
  requireOneOf(format, FORMATS, { what: 'a format of a chart' });
  const harp = options.harp === undefined ? undefined : toHarp(options.harp);
  const { sounding } = options;
  if (sounding !== undefined) {
    requireInteger(sounding, { min: 1, max: chart.bars, what: 'the bar that sounds' });
  }
  const content = contentOf(chart, { reader, harp, level, sounding });
  const title = chartTitle(chart, harp);
  const subject = { chart, content, reader, title, sounding };
  return format === 'slide' ? drawSlide(subject, options) : drawPage(subject, options);
}

interface Subject {
  readonly chart: Chart;
  readonly content: ChartContent;
  readonly reader: ChartReader;
  readonly title: string;
  readonly sounding: number | undefined;
}

function drawPage(subject: Subject, options: PictureOptions): Picture {
  const frame = makeFrame(options, subject.title);
  const { textSize } = frame.theme;
  const wanted = { columns: 4, large: textSize * 1.6, small: textSize * 0.95 };
  return drawOn(frame, subject, wanted);
}

const SLIDE_WIDTH = 1920;

/** The largest text in which the whole chart stands on one slide. */
function drawSlide(subject: Subject, options: PictureOptions): Picture {
  const width = requireInteger(options.width ?? SLIDE_WIDTH, {
    min: 640,
    max: 4000,
    what: 'pixels of width of a slide',
  });
  const height = Math.round((width * 9) / 16);
  const theme = toTheme(options.theme ?? 'screen');
  for (let share = 1; ; share *= 0.92) {
    const textSize = Math.max(10, width * 0.022 * Math.min(1, share * 1.3));
    const frame = makeFrame({ ...options, width, theme: { ...theme, textSize } }, subject.title);
    const wanted = { columns: 4, large: width * 0.06 * share, small: width * 0.028 * share };
    const picture = drawOn(frame, subject, wanted, height);
    if (picture !== undefined) return picture;
  }
}

function drawOn(frame: Frame, subject: Subject, wanted: Wanted): Picture;
function drawOn(
  frame: Frame,
  subject: Subject,
  wanted: Wanted,
  height: number,
): Picture | undefined;
function drawOn(
  frame: Frame,
  { chart, content, reader, sounding }: Subject,
  wanted: Wanted,
  height?: number,
): Picture | undefined {
  const sizes = sizesOf(frame, content, wanted, reader);
  const { hasHoles } = content;
  const drawn = drawChart(content, { frame, sizes, reader, hasHoles });
  const legend = drawLegend(frame, legendOf(frame, content), drawn.bottom);
  if (height !== undefined && legend.bottom + frame.left > height) return undefined;
  return finishPicture(
    frame,
    {
      description: `${describeChart(chart, content)}${sounding === undefined ? '' : ` Bar ${sounding} sounds.`}`,
      text: chartInText(frame.title, content),
      nodes: [...drawn.nodes, ...legend.nodes],
      bottom: legend.bottom,
    },
    height,
  );
}

interface Wanted {
  readonly columns: number;
  readonly large: number;
  readonly small: number;
}

const ROLE_WORDS: Readonly<Record<ChordRole, string>> = Object.freeze({
  one: 'I',
  four: 'IV',
  five: 'V',
  other: 'other chord',
});

function legendOf({ theme }: Frame, { sections }: ChartContent): readonly LegendItem[] {
  const shown = new Set(
    sections.flatMap(({ cells }) =>
      cells.flatMap(({ chords }) =>
        chords.flatMap(({ numeral }) => (numeral === null ? [] : [roleOf(numeral)])),
      ),
    ),
  );
  return (['one', 'four', 'five', 'other'] as const)
    .filter((role) => shown.has(role))
    .map((role) => ({
      label: ROLE_WORDS[role],
      sign: (x, y, r) => {
        const { strong } = theme.chords[role];
        const fill = role === 'other' ? 'none' : strong;
        return shape(ROLE_SHAPES[role], x, y, r, { fill, stroke: strong, strokeWidth: 1.5 });
      },
    }));
}

import type { Chart } from '@reedplate/form';
import {
  type Harp,
  type HarpLike,
  harpName,
  type KnownTunings,
  type PlayerLike,
  toHarp,
} from '@reedplate/layout';
import { barBeatAt } from '@reedplate/line';
import { type Chord, type OptionNames, requireOptions } from '@reedplate/pitch';
import { positionByNumber, positionOf } from '@reedplate/position';
import { chartTitle } from '../chart/chart-in-words.js';
import { chartPicture } from '../chart/chart-picture.js';
import { harpPicture } from '../harp/harp-picture.js';
import { linePicture } from '../line/line-picture.js';
import type { BarRange } from '../require-bars.js';
import { escapeText } from '../svg/node.js';
import type { Theme } from '../theme/theme.js';
import { type ThemeId, toTheme } from '../theme/themes.js';
import { figure } from './figure.js';
import { type HandoutLine, requireLines } from './handout-line.js';
import { handoutStyle } from './handout-style.js';

/** What {@link handoutPage} puts on the page. */
export interface HandoutOptions {
  /** Default the form, its key and the harp. */
  readonly title?: string;
  /** Lines to practise, in the order they are taught; default none. */
  readonly lines?: readonly HandoutLine[];
  /** Default `print`. */
  readonly theme?: ThemeId | Theme;
  /** What the player can do; default `bends`. */
  readonly level?: PlayerLike;
  /** Whether harps are drawn with hole 1 at the right; default false. */
  readonly mirrored?: boolean;
  /** Tunings of one's own, for a harp that is named in one. */
  readonly known?: KnownTunings;
}

const HANDOUT_OPTIONS: OptionNames<HandoutOptions> = {
  title: true,
  lines: true,
  theme: true,
  level: true,
  mirrored: true,
  known: true,
};

/**
 * A lesson as a page of HTML that stands alone and prints on A4 and Letter: the chart, the harp for
 * each of its chords, and lines to practise as tab over their beats, four bars a row. Each picture is there
 * twice, as wide as paper and as narrow as a telephone; the style shows the one that there is room for.
 *
 * @param harp a harp, or its name
 * @throws ReedplateError `HARP_INVALID`, `LINE_EMPTY`, `OPTION_UNKNOWN`
 * @example
 * ```ts
 * import { makeChart } from '@reedplate/form';
 * import { handoutPage } from '@reedplate/picture';
 *
 * const chart = makeChart('basic', 'G');
 * const html = handoutPage(chart, 'C', { title: 'Lesson 1' });
 * html.includes('<h1>Lesson 1</h1>'); // => true
 * html.match(/<figure class="wide">/gu)?.length; // => 4
 * handoutPage(chart, 'H'); // throws KEY_UNKNOWN
 * ```
 */
export function handoutPage(chart: Chart, harp: HarpLike, options: HandoutOptions = {}): string {
  requireOptions(options, HANDOUT_OPTIONS, 'handoutPage');
  const subject = toHarp(harp, options.known);
  const theme = toTheme(options.theme ?? 'print');
  const sections = [
    section('The chart', [figure((width) => chartPicture(chart, { harp: subject, theme, width }))]),
    section('The chords on the harp', harpFigures(chart, subject, theme, options)),
    ...requireLines(options.lines ?? []).map((line) => lineSection(line, chart, subject, theme)),
    section('Take care', [paragraph(CAUTION)]),
  ];
  const title = options.title ?? chartTitle(chart, subject);
  return [
    '<!doctype html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escapeText(title)}</title>`,
    `<style>${handoutStyle(theme)}</style>`,
    '</head>',
    '<body>',
    '<main>',
    `<h1>${escapeText(title)}</h1>`,
    facts(chart, subject),
    ...sections,
    '</main>',
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

/** The one caution of a lesson: PRACTICE_CAUTIONS of `practice`, which pictures do not import. */
const CAUTION =
  'Play softly and rest between choruses. Stop if long blows or draws make you dizzy; if it does not pass, ask a doctor.';

function section(title: string, content: readonly string[]): string {
  return `<section>\n<h2>${escapeText(title)}</h2>\n${content.join('\n')}\n</section>`;
}

function paragraph(words: string): string {
  return `<p>${escapeText(words)}</p>`;
}

function facts({ key, metre, feel, tempo }: Chart, harp: Harp): string {
  const position = positionByNumber(positionOf(harp, key));
  const called = position.tradeName === undefined ? '' : ` (${position.tradeName})`;
  const rows: readonly (readonly [string, string])[] = [
    ['Key', key],
    ['Harp', harpName(harp)],
    ['Position', `${position.ordinal}${called}`],
    ['Time', `${metre}, ${feel}`],
    ...(tempo === undefined ? [] : [['Tempo', `${tempo} beats a minute`] as const]),
  ];
  const cells = rows.map(
    ([name, value]) => `<div><dt>${name}</dt><dd>${escapeText(value)}</dd></div>`,
  );
  return `<dl>${cells.join('')}</dl>`;
}

/** The harp for each chord of the chart, in the order they come. */
function harpFigures(
  { spans, key }: Chart,
  harp: Harp,
  theme: Theme,
  { level = 'bends', mirrored = false }: HandoutOptions,
): readonly string[] {
  const chords = new Map<string, Chord>();
  for (const { chord } of spans) if (chord !== null) chords.set(chord.symbol, chord);
  return [...chords.values()].map((chord) => {
    const shared = { chord, key, theme, level, mirrored, title: chord.symbol };
    return figure((width) => harpPicture(harp, { ...shared, width }));
  });
}

const BARS_A_ROW = 4;

/** Staff notation comes without words; the tab below it says the same. */
function staffOf(title: string, notation: string): string {
  const label = escapeText(`${title} as staff notation`);
  const staff = `<div class="staff" role="img" aria-label="${label}">${notation}</div>`;
  return `<figure tabindex="0">${staff}</figure>`;
}

/** A line as pictures of four bars each, so that a page can break between them. */
function lineSection(
  { title, line, soundings, notation, words = [], chart: own }: HandoutLine,
  chart: Chart,
  harp: Harp,
  theme: Theme,
): string {
  const bars = [...new Set(line.notes.map(({ start }) => barBeatAt(start, line).bar))];
  const rowOf = (bar: number): number => Math.floor((Math.max(1, bar) - 1) / BARS_A_ROW);
  const shared = { chart: own ?? chart, theme, ...(soundings === undefined ? {} : { soundings }) };
  const pictures = [...new Set(bars.map(rowOf))].map((row) => {
    const here = bars.filter((bar) => rowOf(bar) === row);
    const range = [Math.min(...here), Math.max(...here)] as const;
    const named = { ...shared, bars: range, title: `${title}, ${barsInWords(range)}` };
    return figure((width) => linePicture(line, harp, { ...named, width }));
  });
  const staff = notation === undefined ? [] : [staffOf(title, notation)];
  return section(title, [...words.map(paragraph), ...staff, ...pictures]);
}

/** A pickup belongs to the bar after it. */
function barsInWords([first, last]: BarRange): string {
  const from = Math.max(1, first);
  return last <= from ? `bar ${from}` : `bars ${from} to ${last}`;
}

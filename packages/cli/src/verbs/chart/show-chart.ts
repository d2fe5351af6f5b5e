import type { Chart, ChordSpan } from '@reedplate/form';
import { parseMetre } from '@reedplate/line';
import { itemAt } from '@reedplate/pitch';
import { inkOfNumeral, type Page, type Paint } from '../../shared/print.js';
import { titleOfChart } from '../../shared/say-chart.js';
import { setColumns } from '../../shared/table.js';
import { widthOf } from '../../shared/wrap.js';

/** Bars a line, the first that fits the screen: a line of a blues is four bars. */
const BARS_A_LINE = [4, 2, 1] as const;

/**
 * A chart in lines of four bars, numerals over chord names; each chorus begins a line. A narrow screen
 * has two bars a line, or one.
 */
export function showChart(chart: Chart, { paint, width }: Page): readonly string[] {
  const settings = BARS_A_LINE.map((count) => setBars(chart, count));
  const fits = settings.find(({ text }) => text.every((line) => widthOf(line) <= width));
  const { lines, text } = fits ?? itemAt(settings, -1);
  const isNamed = chart.choruses > 1 || chart.intro !== undefined;
  return [
    paint('heading', titleOfChart(chart)),
    ...lines.flatMap(({ bars, begins }, index) => [
      '',
      ...(isNamed && begins !== undefined ? [paint('aside', begins)] : []),
      paintNumerals(itemAt(text, index * 2), bars, paint),
      itemAt(text, index * 2 + 1),
    ]),
  ];
}

/** The chords of one bar. */
type Bar = readonly ChordSpan[];

interface ChartLine {
  readonly bars: readonly Bar[];
  /** What begins with this line: the introduction or a chorus. */
  readonly begins: string | undefined;
}

/** Lines of bars, and their text: numerals, then chord names, for each line. */
interface SetBars {
  readonly lines: readonly ChartLine[];
  readonly text: readonly string[];
}

function setBars(chart: Chart, barsALine: number): SetBars {
  const { beatsPerBar } = parseMetre(chart.metre);
  const lines = linesOf(barsOf(chart), barsALine);
  const rows = lines.flatMap(({ bars }) => [
    [
      `${itemAt(itemAt(bars, 0), 0).bar}`,
      ...bars.map((bar) => sayBar(bar, beatsPerBar, numeralOf)),
    ],
    ['', ...bars.map((bar) => sayBar(bar, beatsPerBar, symbolOf))],
  ]);
  return { lines, text: setColumns(rows) };
}

function barsOf({ spans }: Chart): readonly Bar[] {
  const bars = new Map<number, ChordSpan[]>();
  for (const span of spans) bars.set(span.bar, [...(bars.get(span.bar) ?? []), span]);
  return [...bars.values()];
}

function linesOf(bars: readonly Bar[], barsALine: number): readonly ChartLine[] {
  const lines: { bars: Bar[]; begins: string | undefined }[] = [];
  for (const bar of bars) {
    const line = lines.at(-1);
    const begins = line?.bars.at(-1)?.[0]?.chorus !== bar[0]?.chorus;
    if (line === undefined || begins || line.bars.length === barsALine) {
      lines.push({ bars: [bar], begins: begins ? sayChorus(bar) : undefined });
    } else {
      line.bars.push(bar);
    }
  }
  return lines;
}

function sayChorus([first]: Bar): string {
  return first?.chorus === 0 ? 'introduction' : `chorus ${first?.chorus}`;
}

const numeralOf = ({ numeral }: ChordSpan): string => numeral ?? NO_CHORD;
const symbolOf = ({ chord }: ChordSpan): string => chord?.symbol ?? NO_CHORD;
const NO_CHORD = 'N.C.';

/** Chords that share the bar evenly stand alone; else each further beat of a chord is a slash. */
function sayBar(bar: Bar, beatsPerBar: number, say: (span: ChordSpan) => string): string {
  const beats = beatsOf(bar, beatsPerBar);
  const isEven = beats.every((length) => length === beats[0]);
  const counts = isEven || !beats.every(Number.isInteger) ? [] : beats;
  const marks = bar.map((span, at) => `${say(span)}${' /'.repeat((counts[at] ?? 1) - 1)}`);
  return `| ${marks.join(' ')}`;
}

/** Felt beats that each chord of a bar lasts. */
function beatsOf(bar: Bar, beatsPerBar: number): readonly number[] {
  return bar.map(({ beat }, at) => (bar[at + 1]?.beat ?? beatsPerBar + 1) - beat);
}

/** Colours each numeral where it stands, from the left, so that setting is not disturbed. */
function paintNumerals(text: string, bars: readonly Bar[], paint: Paint): string {
  let rest = text;
  let painted = '';
  for (const span of bars.flat()) {
    const ink = inkOfNumeral(span.numeral);
    const at = rest.indexOf(` ${numeralOf(span)}`) + 1;
    const end = at + numeralOf(span).length;
    const word = rest.slice(at, end);
    painted += rest.slice(0, at) + (ink === undefined ? word : paint(ink, word));
    rest = rest.slice(end);
  }
  return painted + rest;
}

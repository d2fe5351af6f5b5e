import { parseMetre } from '@reedplate/line';
import { inkOfNumeral, type Paint } from '../../shared/print.js';
import { setColumns } from '../../shared/table.js';
import type { ChartBar, ChartChord, ChartReport } from './report.js';

const BARS_A_LINE = 4;

/** A chart in lines of four bars, numerals over chord names; each chorus begins a line. */
export function showChart({ bars, chart }: ChartReport, paint: Paint): readonly string[] {
  const title = `${chart.form} in ${chart.key}, ${chart.metre}, ${chart.feel}`;
  const lines = linesOf(bars);
  const { beatsPerBar } = parseMetre(chart.metre);
  const set = setColumns(
    lines.flatMap(({ bars: line }) => [
      [`${line[0]?.bar ?? ''}`, ...line.map((bar) => sayNumerals(bar, beatsPerBar))],
      ['', ...line.map((bar) => sayChords(bar, beatsPerBar))],
    ]),
  );
  const isNamed = chart.choruses > 1 || chart.intro !== undefined;
  return [
    paint('heading', title),
    ...lines.flatMap(({ bars: line, begins }, index) => [
      '',
      ...(isNamed && begins !== undefined ? [paint('remark', begins)] : []),
      paintNumerals(set[index * 2] ?? '', line, paint),
      set[index * 2 + 1] ?? '',
    ]),
  ];
}

interface ChartLine {
  readonly bars: readonly ChartBar[];
  /** What begins with this line: the introduction or a chorus. */
  readonly begins: string | undefined;
}

function linesOf(bars: readonly ChartBar[]): readonly ChartLine[] {
  const lines: { bars: ChartBar[]; begins: string | undefined }[] = [];
  for (const bar of bars) {
    const line = lines.at(-1);
    const begins = line?.bars.at(-1)?.chorus !== bar.chorus;
    if (line === undefined || begins || line.bars.length === BARS_A_LINE) {
      lines.push({ bars: [bar], begins: begins ? sayChorus(bar) : undefined });
    } else {
      line.bars.push(bar);
    }
  }
  return lines;
}

function sayChorus({ chorus }: ChartBar): string {
  return chorus === 0 ? 'introduction' : `chorus ${chorus}`;
}

function sayNumerals({ chords }: ChartBar, beatsPerBar: number): string {
  return sayBar(
    chords.map(({ numeral }) => numeral),
    beatsOf(chords, beatsPerBar),
  );
}

function sayChords({ chords }: ChartBar, beatsPerBar: number): string {
  return sayBar(
    chords.map(({ chord }) => chord),
    beatsOf(chords, beatsPerBar),
  );
}

/** Felt beats that each chord of a bar lasts. */
function beatsOf(chords: readonly ChartChord[], beatsPerBar: number): readonly number[] {
  return chords.map(({ beat }, at) => (chords[at + 1]?.beat ?? beatsPerBar + 1) - beat);
}

/** Chords that share the bar evenly stand alone; else each further beat of a chord is a slash. */
function sayBar(names: readonly (string | null)[], beats: readonly number[]): string {
  const isEven = beats.every((length) => length === beats[0]);
  const counts = isEven || !beats.every(Number.isInteger) ? [] : beats;
  const marks = names.map((name, at) => `${name ?? 'N.C.'}${' /'.repeat((counts[at] ?? 1) - 1)}`);
  return `| ${marks.join(' ')}`;
}

/** Colours each numeral where it stands, from the left, so that setting is not disturbed. */
function paintNumerals(text: string, bars: readonly ChartBar[], paint: Paint): string {
  let rest = text;
  let painted = '';
  for (const { numeral } of bars.flatMap(({ chords }) => chords)) {
    const ink = inkOfNumeral(numeral);
    const at = rest.indexOf(` ${numeral ?? 'N.C.'}`) + 1;
    const end = at + (numeral ?? 'N.C.').length;
    const word = rest.slice(at, end);
    painted += rest.slice(0, at) + (ink === undefined ? word : paint(ink, word));
    rest = rest.slice(end);
  }
  return painted + rest;
}

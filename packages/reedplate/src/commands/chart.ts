import type { Command } from 'commander';
import { examples } from '../command/examples.js';
import { type ChartWords, readChart, withChartOptions, withJson } from '../command/options.js';
import { inkOfNumeral, type Paint, printReport } from '../command/print.js';
import { setColumns } from '../command/table.js';
import type { Terminal } from '../command/terminal.js';
import { type ChartBar, type ChartReport, chartReport } from '../reports/chart.js';

const BARS_A_LINE = 4;

/** Adds `reedplate chart`. */
export function addChart(program: Command, terminal: Terminal): void {
  withJson(withChartOptions(program.command('chart')))
    .description('the form as bars of chords: Roman numerals and chord names')
    .addHelpText('after', examples('reedplate chart --form quick-change --key G'))
    .action((words: ChartWords & { readonly json: boolean }) => {
      printReport(chartReport(readChart(words)), words, terminal, showChart);
    });
}

function showChart({ bars, chart }: ChartReport, paint: Paint): readonly string[] {
  const title = `${chart.form} in ${chart.key}, ${chart.metre}, ${chart.feel}`;
  const lines = chunk(bars, BARS_A_LINE);
  const rows = lines.flatMap((line) => [
    [`${line[0]?.bar ?? ''}`, ...line.map(sayNumerals)],
    ['', ...line.map(sayChords)],
  ]);
  const set = setColumns(rows);
  return [
    paint('heading', title),
    ...lines.flatMap((line, index) => [
      '',
      paintNumerals(set[index * 2] ?? '', line, paint),
      set[index * 2 + 1] ?? '',
    ]),
  ];
}

function sayNumerals({ chords }: ChartBar): string {
  return `| ${chords.map(({ numeral }) => numeral ?? 'N.C.').join(' ')}`;
}

function sayChords({ chords }: ChartBar): string {
  return `| ${chords.map(({ chord }) => chord ?? 'N.C.').join(' ')}`;
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

function chunk<Item>(items: readonly Item[], size: number): readonly (readonly Item[])[] {
  return Array.from({ length: Math.ceil(items.length / size) }, (_, index) =>
    items.slice(index * size, (index + 1) * size),
  );
}

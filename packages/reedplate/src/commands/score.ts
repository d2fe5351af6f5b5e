import type { BarScore, ChangeScore, Measures } from '@reedplate/chord-tone';
import { readLine } from '@reedplate/line';
import type { Command } from 'commander';
import { examples } from '../command/examples.js';
import {
  type ChartWords,
  type HarpWords,
  readChartFor,
  readHarp,
  withChartOptions,
  withJson,
} from '../command/options.js';
import { type Paint, printReport } from '../command/print.js';
import { setColumns } from '../command/table.js';
import type { Terminal } from '../command/terminal.js';
import { type ScoreReport, scoreReport } from '../reports/score.js';
import { sayHarp } from './say-harp.js';

interface ScoreWords extends ChartWords, Partial<HarpWords> {
  readonly json: boolean;
}

/** Adds `reedplate score`. */
export function addScore(program: Command, terminal: Terminal): void {
  withJson(withChartOptions(program.command('score')))
    .argument('<take>', 'file of the take, as JSON of a line; - for standard input')
    .description('how well a take follows the changes, in total, by bar and by change, and why')
    .option('--harp <key>', 'harp at hand, for suggestions as tab')
    .addHelpText(
      'after',
      examples('reedplate score take.json --form quick-change --key G --harp C'),
    )
    .action((file: string, words: ScoreWords) => {
      const take = readLine(terminal.readText(file));
      const { harp: key } = words;
      const harp = key === undefined ? {} : { harp: readHarp({ ...STANDARD, harp: key }) };
      printReport(
        scoreReport(take, readChartFor(take, words, terminal), harp),
        words,
        terminal,
        showScore,
      );
    });
}

const STANDARD = { tuning: 'standard', register: 'standard' } as const;

function showScore(report: ScoreReport, paint: Paint): readonly string[] {
  const { score, remarks } = report;
  return [
    paint('heading', titleOf(report)),
    '',
    `${paint('heading', `${Math.round(score.total)} of 100`)}   the same notes in any order: ${Math.round(score.chance)}; sureness ${percent(score.confidence)}`,
    '',
    ...showMeasures(score.measures),
    '',
    ...showBars(score.bars, paint),
    '',
    ...showChanges(score.changes, paint),
    ...(remarks.length === 0 ? [] : ['', paint('heading', 'marked down')]),
    ...remarks.map((remark) => `  ${remark}`),
  ];
}

function titleOf({ title, form, key, harp }: ScoreReport): string {
  return `${title ?? 'take'}: ${form} in ${key}${harp === null ? '' : ` on a ${sayHarp(harp)}`}`;
}

const MEASURE_NAMES: readonly (readonly [keyof Measures, string])[] = [
  ['landing', 'landing on a chord tone at the changes'],
  ['coverage', 'changes that the line shows'],
  ['chordToneShare', 'time on chord tones'],
  ['guideToneShare', 'time on thirds and sevenths'],
  ['resolution', 'other notes that resolve'],
  ['clashTime', 'time on clashes (less is better)'],
  ['timing', 'onsets on the grid'],
];

function showMeasures(measures: Measures): readonly string[] {
  return setColumns(
    MEASURE_NAMES.map(([measure, name]) => [percent(measures[measure]).padStart(5), name]),
  );
}

const STRIP = 10;

/** One row a bar: a strip of marks as long as the bar is good, and its number. */
function showBars(bars: readonly BarScore[], paint: Paint): readonly string[] {
  const rows = bars.map(({ bar, chords, fit }) => [
    `${bar}`,
    chords.join(' '),
    fit === null ? '' : '='.repeat(Math.round(fit * STRIP)).padEnd(STRIP, '.'),
    fit === null ? 'rest' : percent(fit),
  ]);
  const [head = '', ...body] = setColumns([['bar', 'chord', 'fit', ''], ...rows]);
  return [paint('heading', head), ...body];
}

function showChanges(changes: readonly ChangeScore[], paint: Paint): readonly string[] {
  const rows = changes.map(({ bar, beat, chord, class: kind, landing, shown }) => [
    `${bar}:${beat}`,
    chord,
    kind ?? 'rest',
    landing === null ? '' : percent(landing),
    shown === false ? 'not shown' : '',
  ]);
  const [head = '', ...body] = setColumns([['change', 'chord', 'lands on', '', ''], ...rows]);
  return [paint('heading', head), ...body];
}

function percent(share: number | null): string {
  return share === null ? '-' : `${Math.round(share * 100)} %`;
}

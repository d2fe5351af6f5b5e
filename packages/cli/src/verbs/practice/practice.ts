import type { Chart } from '@reedplate/form';
import { TECHNIQUE_LEVELS, type TechniqueLevel } from '@reedplate/layout';
import { positionByNumber, positionOf } from '@reedplate/position';
import { PRACTICE_KINDS, type PracticeKind, type PracticeOptions } from '@reedplate/practice';
import { parseTab, soundMark } from '@reedplate/tab';
import type { Command } from 'commander';
import { type ChartWords, readChart, withChartOptions } from '../../shared/chart-options.js';
import { examples } from '../../shared/examples.js';
import { type HarpWords, readHarp, withHarpOptions } from '../../shared/harp-options.js';
import { withJson } from '../../shared/options.js';
import { writePieceBytes } from '../../shared/piece-file.js';
import { type Paint, printReport } from '../../shared/print.js';
import { sayHarp } from '../../shared/say-harp.js';
import { setColumns } from '../../shared/table.js';
import type { Terminal } from '../../terminal.js';
import { type PracticeReport, practiceReport } from './report.js';

interface PracticeWords extends ChartWords, HarpWords {
  readonly kind: string;
  readonly level?: string;
  readonly output?: string;
  readonly title?: string;
  readonly json: boolean;
}

/** Gives `reedplate practice` its options and what it does. */
export function setUpPractice(verb: Command, terminal: Terminal): void {
  withJson(withHarpOptions(withChartOptions(verb)))
    .option('--kind <kind>', `what to practise: ${PRACTICE_KINDS.join(', ')}`, 'roots')
    .option(
      '--level <level>',
      `what the player can do: ${TECHNIQUE_LEVELS.join(', ')}; natural without it`,
    )
    .option('--title <title>', 'title of what is written; without it kind, form and key')
    .option('-o, --output <file>', 'write the line too: .json, .mid, .musicxml, .abc or .tab')
    .addHelpText(
      'after',
      examples(
        'reedplate practice --form basic --key G --harp C --kind guide-tones',
        'reedplate practice --form basic --key G --harp C -o roots.musicxml',
      ),
    )
    .action((words: PracticeWords) => {
      const chart = readChart(words, terminal);
      const harp = readHarp(words, terminal);
      const report = practiceReport(chart, harp, readOptions(words));
      if (words.output !== undefined) writeLine(report, chart, words.output, words.title, terminal);
      printReport(report, words, terminal, showPractice);
    });
}

/** Writes the line with the tab that the screen shows, a title, and what to pick up. */
function writeLine(
  { line, kind, form, key, harp, moves }: PracticeReport,
  chart: Chart,
  file: string,
  given: string | undefined,
  terminal: Terminal,
): void {
  const usual = `${kind.charAt(0).toUpperCase()}${kind.slice(1)} of ${form} in ${key}`;
  const title = (given ?? usual).replaceAll('-', given === undefined ? ' ' : '-');
  const { ordinal } = positionByNumber(positionOf(harp, chart.key));
  const soundings = moves.map(({ tab }) =>
    parseTab(tab).flatMap((event) => event.map((mark) => soundMark(mark, harp))),
  );
  const options = { harp, soundings, title, remark: `${sayHarp(harp)}, ${ordinal} position` };
  terminal.writeBytes(file, writePieceBytes({ line, chart, key }, file, options));
}

function readOptions({ kind, level }: PracticeWords): PracticeOptions {
  return {
    kind: kind as PracticeKind,
    ...(level === undefined ? {} : { level: level as TechniqueLevel }),
  };
}

function showPractice(report: PracticeReport, paint: Paint): readonly string[] {
  const { kind, form, key, harp, moves } = report;
  const rows = moves.map(({ bar, beat, numeral, chord, tab, notes, degrees }) => [
    beat === 1 ? `${bar}` : `${bar}:${Math.round(beat * 100) / 100}`,
    numeral ?? '',
    chord,
    tab,
    notes.join(' '),
    degrees.join(' '),
  ]);
  const [head = '', ...body] = setColumns([
    ['bar', '', 'chord', 'tab', 'notes', 'degrees'],
    ...rows,
  ]);
  return [
    paint('heading', `${kind} of ${form} in ${key} on the ${sayHarp(harp)}`),
    '',
    paint('heading', head),
    ...body,
    '',
    ...sayStandIns(report).map((line) => paint('remark', line)),
    ...report.cautions.map((caution) => paint('remark', caution)),
  ];
}

/** What a kind of line plays wherever the harp has it; the other kinds take any tone. */
const WANTED: ReadonlyMap<
  PracticeKind,
  { readonly what: string; readonly degrees: readonly string[] }
> = new Map([
  ['roots', { what: 'root', degrees: ['1'] }],
  ['guide-tones', { what: 'third or seventh', degrees: ['b3', '3', 'bb7', 'b7', '7', '6'] }],
]);

/** A line that does not play what was asked for says so. */
function sayStandIns({ kind, moves }: PracticeReport): readonly string[] {
  const wanted = WANTED.get(kind);
  if (wanted === undefined) return [];
  const { what, degrees } = wanted;
  const standIns = moves.filter((move) => !move.degrees.some((had) => degrees.includes(had)));
  const chords = [...new Set(standIns.map(({ chord }) => chord))].join(', ');
  if (chords === '') return [];
  return [
    `At this level the harp has no ${what} of ${chords}: another tone stands in; see --level.`,
  ];
}

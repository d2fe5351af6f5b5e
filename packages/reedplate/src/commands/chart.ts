import {
  type ChartOptions,
  ENDINGS,
  type EndingId,
  FEELS,
  type Feel,
  type Form,
  type IntroKind,
  makeChart,
  TURNAROUNDS,
  type TurnaroundId,
  VARIATIONS,
  type Variation,
  varyForm,
  withTurnaround,
} from '@reedplate/form';
import type { Metre } from '@reedplate/line';
import { parseKey } from '@reedplate/pitch';
import type { Command } from 'commander';
import { examples } from '../command/examples.js';
import { type ChartWords, readVariedForm, withChartOptions, withJson } from '../command/options.js';
import { printReport } from '../command/print.js';
import { readWholeNumber } from '../command/read-words.js';
import type { Terminal } from '../command/terminal.js';
import { chartReport } from '../reports/chart.js';
import { showChart } from './show-chart.js';

interface ChartVerbWords extends ChartWords {
  readonly vary: string;
  readonly turnaround?: string;
  readonly choruses: string;
  readonly intro?: string;
  readonly ending?: string;
  readonly metre?: string;
  readonly feel?: string;
  readonly json: boolean;
}

/** Adds `reedplate chart`. */
export function addChart(program: Command, terminal: Terminal): void {
  withJson(withPlanOptions(withChartOptions(program.command('chart'))))
    .description('the form as bars of chords: Roman numerals and chord names')
    .addHelpText(
      'after',
      examples(
        'reedplate chart --form quick-change --key G',
        'reedplate chart --form "| i7 | % | iv7 | i7 V7 |" --key Am --choruses 2',
        'reedplate chart --key Eb --vary quick-change,two-five --turnaround one-six-two-five',
      ),
    )
    .action((words: ChartVerbWords) => {
      const form = readWholeForm(words, terminal);
      const chart = makeChart(form, { key: parseKey(words.key), ...readPlan(words) });
      printReport(chartReport(chart), words, terminal, showChart);
    });
}

function withPlanOptions(command: Command): Command {
  return command
    .option('--vary <names>', `variations, by commas: ${VARIATIONS.join(', ')}`, '')
    .option('--turnaround <id>', `the last two bars: ${idsOf(TURNAROUNDS)}`)
    .option('--choruses <number>', 'times through the form', '1')
    .option('--intro <from>', 'bars before the first chorus: five, turnaround')
    .option('--ending <id>', `last two bars of the last chorus: ${idsOf(ENDINGS)}`)
    .option('--metre <metre>', 'time signature: 4/4, 12/8, 6/8, 3/4 …')
    .option('--feel <feel>', `how the beat is felt: ${FEELS.join(', ')}`);
}

function idsOf(closings: readonly { readonly id: string }[]): string {
  return closings.map(({ id }) => id).join(', ');
}

/** The words are checked by the functions they are given to. */
function readWholeForm(words: ChartVerbWords, terminal: Terminal): Form {
  const names = words.vary === '' ? [] : words.vary.split(',').map((name) => name.trim());
  const form = varyForm(readVariedForm(words, terminal), names as readonly Variation[]);
  if (words.turnaround === undefined) return form;
  return withTurnaround(form, words.turnaround as TurnaroundId);
}

const MOST_CHORUSES = 1000;

function readPlan(words: ChartVerbWords): Omit<ChartOptions, 'key'> {
  const { choruses, intro, ending, metre, feel } = words;
  const bounds = { min: 1, max: MOST_CHORUSES, what: 'choruses' };
  return {
    choruses: readWholeNumber(choruses, bounds),
    ...(intro === undefined ? {} : { intro: intro as IntroKind }),
    ...(ending === undefined ? {} : { ending: ending as EndingId }),
    ...(metre === undefined ? {} : { metre: metre as Metre }),
    ...(feel === undefined ? {} : { feel: feel as Feel }),
  };
}

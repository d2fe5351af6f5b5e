import type { Chart } from '@reedplate/form';
import type { Command } from 'commander';
import { type ChartWords, readChart, withChartOptions } from '../../shared/chart-options.js';
import { examples } from '../../shared/examples.js';
import { withJson } from '../../shared/options.js';
import { type PrintWords, printAnswer } from '../../shared/print.js';
import type { Terminal } from '../../terminal.js';
import { showChart } from './show-chart.js';

/** What `reedplate chart --json` prints. */
export type ChartAnswer = Chart;

/** Gives `reedplate chart` its options and what it does. */
export function setUpChart(verb: Command, terminal: Terminal): void {
  withJson(withChartOptions(verb))
    .addHelpText(
      'after',
      examples(
        'reedplate chart --form quick-change --key G',
        'reedplate chart --form "| i7 | % | iv7 | i7 V7 |" --key Am --choruses 2',
        'reedplate chart --key Eb --vary quick-change,two-five --turnaround one-six-two-five',
      ),
    )
    .action((words: ChartWords & PrintWords) => {
      const answer: ChartAnswer = readChart(words, terminal);
      printAnswer(answer, words, terminal, showChart);
    });
}

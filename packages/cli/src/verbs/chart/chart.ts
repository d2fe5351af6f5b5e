import type { Command } from 'commander';
import { type ChartWords, readChart, withChartOptions } from '../../shared/chart-options.js';
import { examples } from '../../shared/examples.js';
import { withJson } from '../../shared/options.js';
import { printReport } from '../../shared/print.js';
import type { Terminal } from '../../terminal.js';
import { chartReport } from './report.js';
import { showChart } from './show-chart.js';

interface ChartVerbWords extends ChartWords {
  readonly json: boolean;
}

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
    .action((words: ChartVerbWords) => {
      printReport(chartReport(readChart(words, terminal)), words, terminal, showChart);
    });
}

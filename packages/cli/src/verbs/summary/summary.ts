import {
  readResults,
  type StudyCellSummary,
  type StudyFigure,
  type StudySummary,
  summariseResults,
} from '@reedplate/study';
import type { Command } from 'commander';
import { count } from '../../shared/count.js';
import { setCsv } from '../../shared/csv.js';
import { examples } from '../../shared/examples.js';
import { withJson } from '../../shared/options.js';
import { type Page, type PrintWords, printAnswer } from '../../shared/print.js';
import { readWholeNumber } from '../../shared/read-words.js';
import type { Terminal } from '../../terminal.js';
import { summaryRows } from './rows.js';

/** What `reedplate summary --json` prints. */
export type SummaryAnswer = StudySummary;

interface SummaryWords extends PrintWords {
  readonly resamples: string;
  readonly seed: string;
  readonly csv: boolean;
}

/** Gives `reedplate summary` its options and what it does. */
export function setUpSummary(verb: Command, terminal: Terminal): void {
  withJson(verb)
    .argument('<results...>', 'files of results of reedplate study; - for standard input')
    .option('--resamples <number>', 'how often the tunes are drawn again', '1000')
    .option('--seed <number>', 'the same seed draws the same tunes', '1')
    .option('--csv', 'print the summary as CSV', false)
    .addHelpText(
      'after',
      examples(
        'reedplate summary results.ndjson',
        'reedplate study tunes.abc | reedplate summary - --csv',
      ),
    )
    .action((files: readonly string[], words: SummaryWords) => {
      const answer: SummaryAnswer = summariseResults(resultsIn(files), {
        resamples: readWholeNumber(words.resamples, { min: 100, max: 100_000, what: 'resamples' }),
        seed: readWholeNumber(words.seed, { min: 0, max: 2 ** 31 - 1, what: 'a seed' }),
      });
      if (words.csv) terminal.out(setCsv(summaryRows(answer)));
      else printAnswer(answer, words, terminal, showSummary);
    });
}

function* resultsIn(files: readonly string[]) {
  for (const file of files) yield* readResults(file);
}

const ASIDE =
  'whole tunes: share that can be played whole; of those: points an event, bends and overbends in 100 events; in brackets 95 % intervals';

const HEAD = ['tuning', 'position', 'level', 'whole tunes', 'effort', 'bends', 'overbends'];

function showSummary(
  { model, tunes, failures, cells }: SummaryAnswer,
  { paint, table }: Page,
): readonly string[] {
  const unread = failures === 0 ? '' : `; ${failures} could not be read`;
  return [
    paint('heading', `${count(tunes, 'tune')} (${model})${unread}`),
    '',
    ...table({ head: HEAD, rows: cells.map(rowOf) }),
    '',
    paint('aside', ASIDE),
  ];
}

function rowOf(cell: StudyCellSummary): readonly string[] {
  return [
    cell.tuning,
    `${cell.position}`,
    cell.level,
    sayInterval(cell.wholeShare, (share) => `${Math.round(100 * share)}`, ' %'),
    sayInterval(cell.effortPerEvent, (points) => points.toFixed(2)),
    sayInterval(cell.bendsPerHundred, (bends) => bends.toFixed(1)),
    sayInterval(cell.overbendsPerHundred, (overbends) => overbends.toFixed(1)),
  ];
}

function sayInterval(
  interval: StudyFigure | null,
  say: (value: number) => string,
  unit = '',
): string {
  if (interval === null) return '-';
  const { value, low, high } = interval;
  return `${say(value)}${unit} (${say(low)}-${say(high)})`;
}

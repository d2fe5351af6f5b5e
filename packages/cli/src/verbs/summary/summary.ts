import { ReedplateError, requireOneOf } from '@reedplate/pitch';
import { DEFAULT_LINE_TEMPO } from '@reedplate/playability';
import {
  COMPARED_FIGURES,
  COMPARED_PARTS,
  type ComparedFigure,
  type ComparisonOptions,
  compareCells,
  compareStudies,
  mergeStudyManifests,
  readResults,
  readStudyManifest,
  type StudyCellSummary,
  type StudyComparison,
  type StudyFailure,
  type StudyFigure,
  type StudyResult,
  type StudySummary,
  summariseResults,
} from '@reedplate/study';
import type { Command } from 'commander';
import { count } from '../../shared/count.js';
import { setCsv } from '../../shared/csv.js';
import { examples } from '../../shared/examples.js';
import { isFileName } from '../../shared/file-words.js';
import { withJson } from '../../shared/options.js';
import { type Page, type PrintWords, printAnswer } from '../../shared/print.js';
import { readWholeNumber } from '../../shared/read-words.js';
import type { Terminal } from '../../terminal.js';
import { comparisonRows, showComparisons } from './comparisons.js';
import { summaryRows } from './rows.js';

/** What `reedplate summary --json` prints. */
export interface SummaryAnswer extends StudySummary {
  /** Where something was named to compare with. */
  readonly comparisons?: readonly StudyComparison[];
}

interface SummaryWords extends PrintWords {
  readonly resamples: string;
  readonly seed: string;
  readonly csv: boolean;
  readonly partial: boolean;
  readonly against?: string;
  readonly figure: string;
}

/** Gives `reedplate summary` its options and what it does. */
export function setUpSummary(verb: Command, terminal: Terminal): void {
  withJson(verb)
    .argument('<results...>', 'files of results of reedplate study; - for standard input')
    .option(
      '--against <what>',
      'compare over the same tunes: a tuning, position or level that all others are compared with, or a file of results of another model',
    )
    .option(
      '--figure <figure>',
      `what is compared: ${COMPARED_FIGURES.join(', ')}`,
      'effortPerEvent',
    )
    .option('--partial', 'sum up what is there though tunes are missing', false)
    .option('--resamples <number>', 'how often the tunes are drawn again', '1000')
    .option('--seed <number>', 'the same seed draws the same tunes', '1')
    .option('--csv', 'print the summary, or the comparisons, as CSV', false)
    .addHelpText(
      'after',
      examples(
        'reedplate summary results.ndjson',
        'reedplate study tunes.abc | reedplate summary - --csv',
        'reedplate summary results.ndjson --against 1 --figure wholeShare',
      ),
    )
    .action((files: readonly string[], words: SummaryWords) => {
      const answer = summaryOf(files, words);
      const { comparisons } = answer;
      if (words.csv)
        terminal.out(setCsv(comparisons ? comparisonRows(comparisons) : summaryRows(answer)));
      else printAnswer(answer, words, terminal, showSummary);
    });
}

function summaryOf(files: readonly string[], words: SummaryWords): SummaryAnswer {
  const { partial, against } = words;
  const drawn = {
    resamples: readWholeNumber(words.resamples, { min: 100, max: 100_000, what: 'resamples' }),
    seed: readWholeNumber(words.seed, { min: 0, max: 2 ** 31 - 1, what: 'a seed' }),
  };
  if (!partial) requireFinished(files);
  const results = [...resultsIn(files)];
  const summary = summariseResults(results, { ...drawn, partial });
  if (against === undefined) return summary;
  const figure = requireOneOf(words.figure as ComparedFigure, COMPARED_FIGURES, {
    what: 'a figure to compare',
  });
  return { ...summary, comparisons: comparisonsOf(results, against, { ...drawn, figure }) };
}

function comparisonsOf(
  results: readonly (StudyResult | StudyFailure)[],
  against: string,
  options: ComparisonOptions,
): readonly StudyComparison[] {
  const ours = results.filter(isStudied);
  if (isFileName(against)) {
    return compareStudies([...readResults(against)].filter(isStudied), ours, options);
  }
  const cells = ours[0]?.cells ?? [];
  const part = COMPARED_PARTS.find((each) => cells.some((cell) => `${cell[each]}` === against));
  return compareCells(ours, { ...options, against, ...(part && { part }) });
}

const isStudied = (result: StudyResult | StudyFailure): result is StudyResult => 'cells' in result;

function* resultsIn(files: readonly string[]) {
  for (const file of files) yield* readResults(file);
}

/** Results whose study is not finished, and parts of a study that are not all there, are no whole study. */
function requireFinished(files: readonly string[]): void {
  const manifests = files.flatMap((file) => {
    const manifest = file === '-' ? undefined : readStudyManifest(file);
    return manifest === undefined ? [] : [manifest];
  });
  const open = manifests.findIndex(({ isComplete }) => !isComplete);
  if (open >= 0) {
    const expected = 'results of a study that is finished (--resume goes on with it), or --partial';
    throw new ReedplateError({ code: 'STUDY_INVALID', value: files[open], expected });
  }
  if (manifests.length === files.length && files.length > 1) mergeStudyManifests(manifests);
}

const ASIDE =
  'whole tunes: share that can be played whole; of those: points an event, bends and overbends in 100 events; in brackets 95 % intervals';

const HEAD = ['tuning', 'position', 'level', 'whole tunes', 'effort', 'bends', 'overbends'];

function showSummary(answer: SummaryAnswer, page: Page): readonly string[] {
  const { model, tunes, failures, cells, comparisons, digest } = answer;
  const { paint, table } = page;
  const unread = failures === 0 ? '' : `; ${failures} could not be read`;
  return [
    paint('heading', `${count(tunes, 'tune')} (${model})${unread}`),
    '',
    ...table({ head: HEAD, rows: cells.map(rowOf) }),
    '',
    paint('aside', ASIDE),
    paint('aside', `${sayTempos(answer)}; setup ${digest}`),
    ...(comparisons === undefined ? [] : showComparisons(comparisons, page)),
  ];
}

/** Where the tempos came from, in words. */
function sayTempos({ tempos }: SummaryAnswer): string {
  const words = [
    [tempos.tune, 'that of the tune'],
    [tempos.setup, 'that of --tempo'],
    [tempos.default, `${DEFAULT_LINE_TEMPO}, since the tune says none`],
  ] as const;
  const said = words
    .filter(([many]) => many > 0)
    .map(([many, from]) => `${from} (${count(many, 'tune')})`);
  return `tempo: ${said.join('; ')}`;
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
  if (low === null || high === null) return `${say(value)}${unit}`;
  return `${say(value)}${unit} (${say(low)}-${say(high)})`;
}

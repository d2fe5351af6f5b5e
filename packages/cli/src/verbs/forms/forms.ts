import { requireOneOf } from '@reedplate/pitch';
import type { Command } from 'commander';
import { examples } from '../../shared/examples.js';
import { withJson } from '../../shared/options.js';
import { type Paint, printReport } from '../../shared/print.js';
import { readWholeNumber } from '../../shared/read-words.js';
import { setColumns } from '../../shared/table.js';
import type { Terminal } from '../../terminal.js';
import {
  type ClosingEntry,
  type FormEntry,
  type FormsOptions,
  type FormsReport,
  formsReport,
} from './report.js';

interface FormsWords {
  readonly bars?: string;
  readonly mode?: string;
  readonly json: boolean;
}

const MODES = ['major', 'minor'] as const;
const MOST_BARS = 1024;

/** Gives `reedplate forms` its options and what it does. */
export function setUpForms(verb: Command, terminal: Terminal): void {
  withJson(verb)
    .argument('[id]', 'a form to show with its bars, use and source')
    .option('--bars <number>', 'only forms of so many bars, without turnarounds and endings')
    .option('--mode <mode>', `only ${MODES.join(' or ')}`)
    .addHelpText('after', examples('reedplate forms --bars 8', 'reedplate forms quick-change'))
    .action((id: string | undefined, words: FormsWords) => {
      const report = formsReport({ ...readFilter(words), ...(id === undefined ? {} : { id }) });
      printReport(report, words, terminal, id === undefined ? showCatalogue : showForms);
    });
}

function readFilter({ bars, mode }: FormsWords): FormsOptions {
  const bounds = { min: 1, max: MOST_BARS, what: 'bars' };
  return {
    ...(bars === undefined ? {} : { length: readWholeNumber(bars, bounds) }),
    ...(mode === undefined ? {} : { mode: requireOneOf(mode, MODES, { what: 'a mode' }) }),
  };
}

function showCatalogue(report: FormsReport, paint: Paint): readonly string[] {
  const { forms, turnarounds, endings } = report;
  const closings = [
    ['turnarounds', turnarounds],
    ['endings', endings],
  ] as const;
  return [
    ...section(`forms (${forms.length})`, forms.map(formRow), paint),
    '',
    ...closings.flatMap(([title, rows]) =>
      rows.length === 0
        ? []
        : [...section(`${title} (${rows.length})`, rows.map(closingRow), paint), ''],
    ),
    'reedplate forms ID shows the bars, use and source of one form.',
  ];
}

function section(
  title: string,
  rows: readonly (readonly string[])[],
  paint: Paint,
): readonly string[] {
  return [paint('heading', title), ...(rows.length === 0 ? ['none'] : setColumns(rows))];
}

function formRow({ id, length, metre, feel, description }: FormEntry): readonly string[] {
  return [id, `${length} bars`, metre, feel, description];
}

function closingRow({ id, bars, name }: ClosingEntry): readonly string[] {
  return [id, bars, name];
}

function showForms({ forms }: FormsReport, paint: Paint): readonly string[] {
  return forms.flatMap(({ name, description, bars, use, source }) => [
    paint('heading', name),
    description,
    '',
    ...bars.split('\n'),
    '',
    `use: ${use}`,
    `source: ${source}`,
  ]);
}

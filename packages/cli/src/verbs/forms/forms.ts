import {
  type ClosingBars,
  ENDINGS,
  FORMS,
  type Form,
  formatForm,
  formById,
  TURNAROUNDS,
} from '@reedplate/form';
import { type Mode, ReedplateError, requireOneOf } from '@reedplate/pitch';
import type { Command } from 'commander';
import { count } from '../../shared/count.js';
import { examples } from '../../shared/examples.js';
import { withJson } from '../../shared/options.js';
import { type Page, type PrintWords, printAnswer } from '../../shared/print.js';
import { readWholeNumber } from '../../shared/read-words.js';
import type { Terminal } from '../../terminal.js';

/** What `reedplate forms --json` prints: forms or, where they are asked for, turnarounds or endings. */
export type FormsAnswer = readonly Form[] | readonly ClosingBars[];

interface FormsWords extends PrintWords {
  readonly bars?: string;
  readonly mode?: string;
  readonly turnarounds: boolean;
  readonly endings: boolean;
}

const MODES = ['major', 'minor'] as const;
const MOST_BARS = 1024;

/** Gives `reedplate forms` its options and what it does. */
export function setUpForms(verb: Command, terminal: Terminal): void {
  withJson(verb)
    .argument('[id]', 'a form to show with its bars, use and source')
    .option('--bars <number>', 'only forms of so many bars')
    .option('--mode <mode>', `only ${MODES.join(' or ')}`)
    .option('--turnarounds', 'turnarounds in place of forms', false)
    .option('--endings', 'endings in place of forms', false)
    .addHelpText(
      'after',
      examples(
        'reedplate forms --bars 8',
        'reedplate forms quick-change',
        'reedplate forms --turnarounds',
      ),
    )
    .action((id: string | undefined, words: FormsWords) => {
      printForms(id, words, terminal);
    });
}

function printForms(id: string | undefined, words: FormsWords, terminal: Terminal): void {
  const kinds = Object.keys(CLOSINGS).filter((kind) => words[kind as keyof typeof CLOSINGS]);
  const [kind] = kinds as (keyof typeof CLOSINGS)[];
  const isOfMode = ofMode(words);
  if (kind !== undefined) {
    requireAlone(id, words, kinds);
    const closings = CLOSINGS[kind].filter(isOfMode);
    const show = (_: FormsAnswer, page: Page) => listOf(kind, closings.map(closingRow), page);
    printAnswer<FormsAnswer>(closings, words, terminal, show);
    return;
  }
  const forms = (id === undefined ? FORMS : [formById(id)])
    .filter(isOfMode)
    .filter(ofLength(words));
  const isWhole = id === undefined && words.bars === undefined;
  printAnswer<FormsAnswer>(forms, words, terminal, (_, page) =>
    id === undefined
      ? showCatalogue(forms, isWhole, isOfMode, page)
      : forms.flatMap(showForm(page)),
  );
}

const CLOSINGS = { turnarounds: TURNAROUNDS, endings: ENDINGS } as const;

function requireAlone(
  id: string | undefined,
  { bars }: FormsWords,
  kinds: readonly string[],
): void {
  if (id === undefined && bars === undefined && kinds.length === 1) return;
  throw new ReedplateError({
    code: 'USAGE',
    value: `--${kinds.join(' --')}`,
    expected: '--turnarounds or --endings alone, without a form or --bars',
  });
}

function ofMode({ mode }: FormsWords): (entry: { readonly mode: Mode }) => boolean {
  if (mode === undefined) return () => true;
  const wanted = requireOneOf(mode, MODES, { what: 'a mode' });
  return (entry) => entry.mode === wanted;
}

function ofLength({ bars }: FormsWords): (form: Form) => boolean {
  if (bars === undefined) return () => true;
  const wanted = readWholeNumber(bars, { min: 1, max: MOST_BARS, what: 'bars' });
  return (form) => form.bars.length === wanted;
}

function showCatalogue(
  forms: readonly Form[],
  isWhole: boolean,
  isOfMode: (entry: { readonly mode: Mode }) => boolean,
  page: Page,
): readonly string[] {
  const rows = forms.map(({ id, bars, metre, feel, description }) => [
    id,
    count(bars.length, 'bar'),
    metre,
    feel,
    description,
  ]);
  const closings = isWhole
    ? (Object.keys(CLOSINGS) as (keyof typeof CLOSINGS)[]).flatMap((kind) => [
        ...listOf(kind, CLOSINGS[kind].filter(isOfMode).map(closingRow), page),
        '',
      ])
    : [];
  return [
    ...listOf('forms', rows, page),
    '',
    ...closings,
    'reedplate forms ID shows the bars, use and source of one form.',
  ];
}

function listOf(
  title: string,
  rows: readonly (readonly string[])[],
  { paint, table }: Page,
): readonly string[] {
  const heading = paint('heading', `${title} (${rows.length})`);
  if (rows.length === 0) return [heading, 'none'];
  return [heading, ...table({ rows })];
}

/** Two bars as they are written on a lead sheet. */
function closingRow({ id, bars, name }: ClosingBars): readonly string[] {
  return [id, formatForm({ ...(FORMS[0] as Form), bars }), name];
}

function showForm({ paint }: Page): (form: Form) => readonly string[] {
  return (form) => [
    paint('heading', form.name),
    form.description,
    '',
    ...formatForm(form).split('\n'),
    '',
    `use: ${form.use}`,
    `source: ${form.source}`,
  ];
}

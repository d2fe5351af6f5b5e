import {
  formatOfName,
  PIECE_FORMAT_IDS,
  type Piece,
  type PieceFormatId,
  type PieceSummary,
  type Sheet,
  summarisePiece,
} from '@reedplate/interchange';
import type { Harp } from '@reedplate/layout';
import type { Metre } from '@reedplate/line';
import { parseKey, ReedplateError, requireOneOf } from '@reedplate/pitch';
import { TAB_DIALECT_IDS, type TabDialectId } from '@reedplate/tab';
import type { Command } from 'commander';
import { type ChartForLineWords, readChartFor } from '../../shared/chart-for-line.js';
import { withMaybeChartForLineOptions } from '../../shared/chart-options.js';
import { count } from '../../shared/count.js';
import { examples } from '../../shared/examples.js';
import {
  type MaybeHarpWords,
  readMaybeHarp,
  withMaybeHarpOptions,
} from '../../shared/harp-options.js';
import { type LevelWords, readLevel, withLevel } from '../../shared/level-options.js';
import { withJson } from '../../shared/options.js';
import { type PartWords, readPart, withPart } from '../../shared/part-option.js';
import { readPieceFile, writePieceFile } from '../../shared/piece-file.js';
import { type Page, type PrintWords, printAnswer } from '../../shared/print.js';
import { readWholeNumber } from '../../shared/read-words.js';
import type { Terminal } from '../../terminal.js';
import { needsGrid, type QuantiseWords, quantisePiece, withQuantiseOptions } from './quantise.js';

/** What `reedplate convert --json` prints. */
export type ConvertAnswer = PieceSummary;

interface ConvertWords
  extends Partial<ChartForLineWords>,
    LevelWords,
    MaybeHarpWords,
    PartWords,
    QuantiseWords,
    PrintWords {
  readonly from?: string;
  readonly to?: string;
  readonly tune?: string;
  readonly repeats: boolean;
  readonly dialect?: string;
  readonly title?: string;
  readonly tabMetre?: string;
}

/** Gives `reedplate convert` its options and what it does. */
export function setUpConvert(verb: Command, terminal: Terminal): void {
  const command = withMaybeChartForLineOptions(verb);
  withJson(withQuantiseOptions(withLevel(withPart(withMaybeHarpOptions(command, HARP)))))
    .argument('<in>', 'file to read, - for standard input')
    .argument('<out>', 'file to write, - for standard output')
    .option(
      '--from <format>',
      `format of the file read: ${PIECE_FORMAT_IDS.join(', ')}; found without it`,
    )
    .option('--to <format>', 'format of the file written; its name says it without it')
    .option('--tune <number>', 'which tune of an ABC file, from 1')
    .option('--no-repeats', 'read each written bar once')
    .option('--dialect <dialect>', `dialect of tab: ${TAB_DIALECT_IDS.join(', ')}`)
    .option('--title <title>', 'title of what is written, in place of the one read')
    .option('--tab-metre <metre>', 'metre of tab that is read, which does not say it; 4/4 without')
    .addHelpText(
      'after',
      examples(
        'reedplate convert take.mid sheet.musicxml --harp C --form basic --key G',
        'reedplate convert take.mid take.tab --harp C --quantise 1/8,1/8t',
        'reedplate convert tunes.abc tune.mid --tune 3',
      ),
    )
    .action((input: string, output: string, words: ConvertWords) => {
      convert(input, output, words, terminal);
    });
}

const BY_HAND =
  'notes lie off every note value, as if played by hand; --quantise 1/8,1/8t makes them readable';

const HARP = 'harp at hand: tab is read for it, and written under the notes';

function convert(input: string, output: string, words: ConvertWords, terminal: Terminal): void {
  const to = formatFor(output, words);
  const harp = readMaybeHarp(words, terminal);
  const read = readPieceFile(input, terminal, { ...readOptions(words), ...harp });
  requireMetre(read, words);
  const piece = quantisePiece(read, words);
  if (needsGrid(piece.line, to)) terminal.err(`reedplate: ${input}: ${BY_HAND}\n`);
  const sheet = dressSheet(piece, words, terminal);
  writePieceFile(sheet, output, terminal, { to, ...writeOptions(words, harp, terminal) });
  // A print would mix with what is written where both go to standard output.
  if (output !== '-') {
    const answer: ConvertAnswer = summarisePiece({ ...piece, ...sheet });
    printAnswer(answer, words, terminal, (summary, page) => showConvert(summary, to, page));
  }
}

/** Standard output has no name that could say a format. */
function formatFor(output: string, { to }: ConvertWords): PieceFormatId {
  if (to !== undefined) return readFormat(to);
  if (output !== '-') return formatOfName(output, { to: 'write' });
  throw new ReedplateError({
    code: 'USAGE',
    value: output,
    expected: '--to with it, the format to write',
  });
}

function readFormat(word: string): PieceFormatId {
  return requireOneOf(word, PIECE_FORMAT_IDS, { what: 'a format', code: 'FORMAT_UNKNOWN' });
}

const MOST_TUNES = 1_000_000;

function readOptions(words: ConvertWords) {
  const { from, tune, repeats, dialect, tabMetre } = words;
  const what = 'the number of a tune';
  return {
    repeats,
    ...(from === undefined ? {} : { format: readFormat(from) }),
    ...(tune === undefined
      ? {}
      : { tune: readWholeNumber(tune, { min: 1, max: MOST_TUNES, what }) }),
    ...readPart(words),
    ...(dialect === undefined ? {} : { dialect: dialect as TabDialectId }),
    ...(tabMetre === undefined ? {} : { tabHead: { metre: tabMetre as Metre } }),
  };
}

/** Any other file than one of tab says its metre itself. */
function requireMetre({ line }: Piece, { tabMetre }: ConvertWords): void {
  if (tabMetre === undefined || tabMetre === line.metre) return;
  const expected = `--tab-metre with tab alone, or the ${line.metre} that the file says`;
  throw new ReedplateError({ code: 'USAGE', value: tabMetre, expected });
}

function writeOptions(words: ConvertWords, harp: { readonly harp?: Harp }, terminal: Terminal) {
  const { dialect, title } = words;
  return {
    ...harp,
    level: readLevel(words, terminal),
    ...(dialect === undefined ? {} : { dialect: dialect as TabDialectId }),
    ...(title === undefined ? {} : { title }),
  };
}

/** The piece with the key and the chords that the words ask for. */
function dressSheet(piece: Piece, words: ConvertWords, terminal: Terminal): Sheet {
  const { form, key } = words;
  if (key === undefined) {
    if (form === undefined) return piece;
    throw new ReedplateError({ code: 'USAGE', value: form, expected: '--key with --form' });
  }
  const name = parseKey(key).name;
  if (form === undefined) return { ...piece, key: name };
  const chart = readChartFor(piece.line, { ...words, form, key }, terminal);
  return { ...piece, key: name, chart };
}

function showConvert(
  { title, key, metre, tempo, bars, notes, chartBars, parts }: ConvertAnswer,
  to: PieceFormatId,
  { paint, table }: Page,
): readonly string[] {
  const facts = [
    `${count(notes, 'note')} in ${count(bars, 'bar')} of ${metre}`,
    ...(key === null ? [] : [`in ${key}`]),
    ...(tempo === null ? [] : [`at ${tempo}`]),
    ...(chartBars === null ? [] : [`with ${count(chartBars, 'bar')} of chords`]),
  ];
  const rows = parts.map(({ number, name, program, percussion, notes: own }) => [
    `${number}`,
    name,
    percussion ? 'percussion' : program === null ? '' : `program ${program}`,
    count(own, 'note'),
  ]);
  return [
    `${paint('heading', title ?? 'untitled')}: ${facts.join(', ')}, as ${to}`,
    ...(rows.length > 1 ? ['', ...table({ rows })] : []),
  ];
}

import {
  type BackingOptions,
  type BackingSummary,
  GROOVES,
  type GrooveId,
  makeBacking,
  renderBand,
  summariseBacking,
} from '@reedplate/backing';
import {
  formatOfName,
  PIECE_FORMATS,
  type PieceFormatId,
  type Sheet,
} from '@reedplate/interchange';
import { ReedplateError, requireOneOf } from '@reedplate/pitch';
import type { Command } from 'commander';
import { type ChartWords, readChart, withChartOptions } from '../../shared/chart-options.js';
import { count } from '../../shared/count.js';
import { examples } from '../../shared/examples.js';
import { withJson } from '../../shared/options.js';
import { type PartWords, readPart, withPart } from '../../shared/part-option.js';
import { readPieceFile, writePieceFile } from '../../shared/piece-file.js';
import { type Page, type PrintWords, printAnswer } from '../../shared/print.js';
import { readList, readNumber, readWholeNumber } from '../../shared/read-words.js';
import { titleOfChart } from '../../shared/say-chart.js';
import type { Terminal } from '../../terminal.js';

/** What `reedplate backing --json` prints. */
export type BackingAnswer = BackingSummary;

interface BackingWords extends ChartWords, PartWords, PrintWords {
  readonly tempo: string;
  readonly countIn: string;
  readonly finalBar: boolean;
  readonly groove?: string;
  readonly mute?: string;
  readonly trade?: true;
  readonly seed: string;
  readonly swing?: string;
  readonly looseness: string;
  readonly keyChange?: string;
  readonly ladder: string;
  readonly line?: string;
  readonly click?: true;
  readonly output: string;
}

/** Gives `reedplate backing` its options and what it does. */
export function setUpBacking(verb: Command, terminal: Terminal): void {
  withJson(withPart(withChartOptions(verb, { choruses: '4' })))
    .requiredOption(
      '-o, --output <file>',
      'file to write: .mid, .musicxml, .abc, or .wav to listen to',
    )
    .option('--tempo <number>', 'felt beats a minute', '96')
    .option('--count-in <bars>', 'bars counted in', '1')
    .option('--no-final-bar', 'leave out the bar of I after the last chorus')
    .option(
      '--groove <name>',
      `${GROOVES.map(({ id }) => id).join(', ')}; by feel and metre if not given`,
    )
    .option('--mute <parts>', 'parts left out, of bass, comping and drums, with commas between')
    .option('--trade', 'bass and chords rest in every other four bars')
    .option('--seed <number>', 'draws other fills and walks', '1')
    .option(
      '--swing <ratio>',
      'long to short eighth, 1 to 4, or by-tempo, as jazz bands play; 2 without it',
    )
    .option('--looseness <ms>', 'milliseconds that notes come late by chance, 0 to 30', '0')
    .option(
      '--key-change <change>',
      'another key: 2:5 is a fourth up after every two choruses, 1:-2 a tone down',
    )
    .option(
      '--ladder <beats>',
      'beats a minute that each chorus is faster than the one before',
      '0',
    )
    .option('--line <file>', 'a line played on top, in any format')
    .option('--click', 'a click on every beat; for .wav alone')
    .addHelpText(
      'after',
      examples(
        'reedplate backing --form quick-change --key G --tempo 100 --choruses 6 -o blues-in-g.mid',
        'reedplate backing --key A --groove boogie --mute comping -o boogie-in-a.mid',
        'reedplate backing --form minor --key Am --tempo 80 --choruses 2 -o minor.wav',
      ),
    )
    .action(async (words: BackingWords) => {
      const tempo = readTempo(words.tempo);
      const backing = makeBacking(
        readChart(words, terminal, { tempo }),
        readOptions(words, terminal),
      );
      await writeBand(backing, words, terminal);
      const answer: BackingAnswer = summariseBacking(backing);
      printAnswer(answer, words, terminal, showBacking);
    });
}

const SOUND = '.wav';

async function writeBand(
  backing: Sheet,
  { output, click }: BackingWords,
  terminal: Terminal,
): Promise<void> {
  if (output.toLowerCase().endsWith(SOUND)) {
    const { writeWav } = await import('@reedplate/listen');
    terminal.writeBytes(output, writeWav(renderBand(backing, { click: click === true })));
    return;
  }
  const to = bandFormat(output);
  if (click === true) {
    const expected = `--click with ${SOUND} alone: a player of the other files has a click of its own`;
    throw new ReedplateError({ code: 'USAGE', value: output, expected });
  }
  writePieceFile(backing, output, terminal, { to });
}

/** Formats that hold a band: of a file that holds a line alone nothing would be left. */
const BAND_FORMATS = ['midi', 'musicxml', 'abc'] as const;

function bandFormat(file: string): PieceFormatId {
  const endings = BAND_FORMATS.flatMap((id): readonly string[] => PIECE_FORMATS[id].endings);
  const holdsBand = endings.some((ending) => file.toLowerCase().endsWith(ending));
  if (holdsBand) return formatOfName(file, { to: 'write' });
  const expected = 'a name that ends in .mid, .musicxml, .abc or .wav, which hold a band';
  throw new ReedplateError({ code: 'FORMAT_UNKNOWN', value: file, expected });
}

function readTempo(tempo: string): number {
  return readWholeNumber(tempo, { min: 1, max: 1000, what: 'felt beats a minute' });
}

const PARTS = ['bass', 'comping', 'drums'] as const;

function readOptions(words: BackingWords, terminal: Terminal): BackingOptions {
  const { countIn, finalBar, line, groove, mute, trade = false, seed, swing, keyChange } = words;
  const muted = (mute === undefined ? [] : readList(mute)).map((part) =>
    requireOneOf(part, PARTS, { what: 'a part of the band' }),
  );
  return {
    ...Object.fromEntries(muted.map((part) => [part, { mute: true }])),
    // An unknown groove is refused by name where the band is made.
    ...(groove === undefined ? {} : { groove: groove as GrooveId }),
    trade,
    ...(swing === undefined ? {} : { swing: readSwing(swing) }),
    looseness: readWholeNumber(words.looseness, { min: 0, max: 30, what: 'milliseconds' }),
    ...(keyChange === undefined ? {} : { keyChange: readKeyChange(keyChange) }),
    ladder: readNumber(words.ladder, 'beats a minute between choruses'),
    seed: readWholeNumber(seed, { min: 0, max: Number.MAX_SAFE_INTEGER, what: 'a seed' }),
    countIn: readWholeNumber(countIn, { min: 0, max: 8, what: 'bars counted in' }),
    ending: finalBar,
    ...(line === undefined ? {} : { line: readPieceFile(line, terminal, readPart(words)).line }),
  };
}

/** A number; any other word is handed on, to be known or refused by name. */
function readSwing(word: string): number | 'by-tempo' {
  const number = Number(word);
  return Number.isNaN(number) || word.trim() === '' ? (word as 'by-tempo') : number;
}

/** Choruses and semitones: `2:5`. */
function readKeyChange(word: string): NonNullable<BackingOptions['keyChange']> {
  const [, after, by] = /^(\d{1,4}):([+-]?\d{1,2})$/u.exec(word) ?? [];
  if (after !== undefined && by !== undefined) return { after: Number(after), by: Number(by) };
  const expected = 'choruses and semitones, as 2:5';
  throw new ReedplateError({ code: 'USAGE', value: word, expected });
}

function showBacking(backing: BackingAnswer, { paint }: Page): readonly string[] {
  const { tempo, choruses, bars, seconds, parts, cautions } = backing;
  const minutes = `${Math.floor(seconds / 60)}:${`${Math.floor(seconds % 60)}`.padStart(2, '0')}`;
  const length = `${count(choruses, 'chorus', 'choruses')}, ${count(bars, 'bar')}, ${minutes}`;
  return [
    paint('heading', `${titleOfChart(backing)}, at ${tempo}`),
    `${length}: ${parts.map(({ name }) => name).join(', ')}`,
    ...cautions.map((caution) => paint('aside', caution)),
  ];
}

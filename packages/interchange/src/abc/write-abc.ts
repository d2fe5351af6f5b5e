import { parseMetre } from '@reedplate/line';
import {
  type KeyName,
  type OptionNames,
  requireInteger,
  requireOptions,
  toKey,
} from '@reedplate/pitch';
import { HARMONICA_PROGRAM } from '../midi/melody-clues.js';
import { partsOf } from '../midi/write-midi.js';
import { WRITE_NOTATION_OPTIONS, type WriteNotationOptions } from '../musicxml/write-musicxml.js';
import { endsSection, startsSystem } from '../notation/bar-places.js';
import { foldRepeats } from '../notation/fold-repeats.js';
import { openingWords } from '../notation/opening-words.js';
import { titled } from '../notation/titled.js';
import { type WrittenBar, writeBars } from '../notation/write-bars.js';
import type { PiecePart, Sheet } from '../piece.js';
import { requireSheet } from '../require-sheet.js';
import { isSwung } from '../swing.js';
import { readKeyField } from './key-field.js';
import { tempoText, type WriteContext, writeBar } from './write-bar.js';

/** How ABC is written. */
export interface WriteAbcOptions extends WriteNotationOptions {
  /** Number of the tune in its file, its `X:` field, from 1; default 1. */
  readonly number?: number;
}

/** The standard has `|::` for three times; abc2midi 4.84 and abcjs 6.7.2 play it twice, so more is written out. */
const MOST_REPEATS = 2;

const WRITE_ABC_OPTIONS: OptionNames<WriteAbcOptions> = { ...WRITE_NOTATION_OPTIONS, number: true };

/**
 * Writes a tune in ABC notation 2.1: the line with the chart's chord symbols, words as annotations under
 * the notes, each other pitched part as a voice. Accidentals are written so that readers which hold
 * them in one octave and those which hold them in all read the same.
 *
 * @throws ReedplateError `NUMBER_RANGE` for a wrong number, `LINE_INVALID` for a line of more than
 * 20,000 bars
 * @example
 * ```ts
 * import { makeLine } from '@reedplate/line';
 * import { writeAbc } from '@reedplate/interchange';
 *
 * const line = makeLine([{ start: 0, duration: 960, pitch: 67 }, { start: 960, duration: 2880, pitch: 70 }]);
 * writeAbc({ line, key: 'G' }, { words: ['-2', "-3'"] });
 * // => "X:1\nM:4/4\nL:1/8\nK:G\n\"_-2\"G2 \"_-3'\"_B6 |]\n"
 * writeAbc({ line }, { number: 0 }); // throws NUMBER_RANGE
 * ```
 */
export function writeAbc(untitled: Sheet, options: WriteAbcOptions = {}): string {
  requireOptions(options, WRITE_ABC_OPTIONS, 'writeAbc');
  requireSheet(untitled);
  const number = requireInteger(options.number ?? 1, { min: 1, what: 'the number of a tune' });
  const sheet = titled(untitled, options.title);
  const { line, chart } = sheet;
  const key = sheet.key ?? chart?.key ?? 'C';
  const parts = partsOf(sheet, HARMONICA_PROGRAM).filter(({ percussion }) => percussion !== true);
  const isSwing = chart !== undefined && isSwung(line.metre, chart.feel);
  return [
    `X:${number}`,
    ...(line.title === undefined ? [] : [`T:${fieldText(line.title)}`]),
    ...(isSwing ? ['R:shuffle'] : []),
    `M:${line.metre}`,
    ...(line.countIn === undefined ? [] : [`I:count-in ${line.countIn}`]),
    'L:1/8',
    ...tempoField(sheet),
    `K:${toKey(key).name}`,
    // Notes in an N: field are left out by most who engrave; a centred line is printed.
    ...(options.subtitle === undefined ? [] : [`%%center ${fieldText(options.subtitle)}`]),
    ...parts.flatMap((part, at) => [
      ...(parts.length > 1
        ? [`V:${at + 1} name="${fieldText(part.name).replaceAll('"', '')}"`]
        : []),
      ...writePart(part, at === 0, key, { sheet, options }),
    ]),
    '',
  ].join('\n');
}

/** What would begin a comment or an escape is escaped itself. */
function fieldText(text: string): string {
  return text.replaceAll(/[\\%&]/gu, '\\$&').replaceAll(/[\r\n\t]+/gu, ' ');
}

function tempoField({ line, chart }: Sheet): readonly string[] {
  const tempo = line.tempo ?? chart?.tempo;
  const words = openingWords({ feel: chart?.feel, tempo });
  const said = words === '' ? [] : [`"${words}"`];
  const beats = tempo === undefined ? [] : [tempoText(tempo, parseMetre(line.metre).beatTicks)];
  const value = [...said, ...beats].join(' ');
  return value === '' ? [] : [`Q:${value}`];
}

interface PartContext {
  readonly sheet: Sheet;
  readonly options: WriteAbcOptions;
}

function writePart(
  { line }: PiecePart,
  isFirst: boolean,
  key: KeyName,
  { sheet: { chart }, options: { words, repeats = true } }: PartContext,
): readonly string[] {
  const bars = writeBars(line, chart, isFirst ? words : undefined);
  const folded =
    repeats && chart?.choruses === MOST_REPEATS ? foldRepeats(bars, MOST_REPEATS) : bars;
  const signature = readKeyField(toKey(key).name)?.signature ?? new Map();
  const context: WriteContext = { key, signature, beatTicks: parseMetre(line.metre).beatTicks };
  const shown = isFirst ? folded : folded.map((bar) => ({ ...bar, chords: [], tempos: [] }));
  const texts = shown.map((bar, at) => {
    const { before, after } = barLines(bar, at === shown.length - 1, chart);
    return { bar, text: `${before}${writeBar(bar, context)} ${after}` };
  });
  return lines(texts);
}

function barLines(
  bar: WrittenBar,
  isLast: boolean,
  chart: Sheet['chart'],
): { readonly before: string; readonly after: string } {
  const plain = endsSection(bar, chart) ? '||' : '|';
  const after = isLast ? '|]' : plain;
  return { before: bar.opens ? '|:' : '', after: bar.closes > 0 ? ':|' : after };
}

/** Four bars a line, a pickup before the first. */
function lines(bars: readonly { readonly bar: WrittenBar; readonly text: string }[]) {
  const written: string[][] = [];
  for (const { bar, text } of bars) {
    if (written.length === 0 || startsSystem(bar)) written.push([text]);
    else written.at(-1)?.push(text);
  }
  return written.map((line) => line.join(' '));
}

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
import { foldRepeats } from '../notation/fold-repeats.js';
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

const BARS_A_LINE = 4;
/** The standard has `|::` for three times; abc2midi 4.84 and abcjs 6.7.2 play it twice, so more is written out. */
const MOST_REPEATS = 2;

const WRITE_ABC_OPTIONS: OptionNames<WriteAbcOptions> = { ...WRITE_NOTATION_OPTIONS, number: true };

/**
 * Writes a tune in ABC notation 2.1: the line with the chart's chord symbols, words as remarks under
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
    ...(options.remark === undefined ? [] : [`N:${fieldText(options.remark)}`]),
    ...(isSwing ? ['R:shuffle'] : []),
    `M:${line.metre}`,
    ...(line.countIn === undefined ? [] : [`I:count-in ${line.countIn}`]),
    'L:1/8',
    ...tempoField(sheet),
    `K:${toKey(key).name}`,
    ...parts.flatMap((part, at) => [
      ...(parts.length > 1
        ? [`V:${at + 1} name="${fieldText(part.name).replaceAll('"', '')}"`]
        : []),
      ...writePart(part, at === 0, key, { sheet, options }),
    ]),
    '',
  ].join('\n');
}

/** What would begin a remark or an escape is escaped itself. */
function fieldText(text: string): string {
  return text.replaceAll(/[\\%&]/gu, '\\$&').replaceAll(/[\r\n\t]+/gu, ' ');
}

function tempoField({ line, chart }: Sheet): readonly string[] {
  const tempo = line.tempo ?? chart?.tempo;
  if (tempo === undefined) return [];
  return [`Q:${tempoText(tempo, parseMetre(line.metre).beatTicks)}`];
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
    const { before, after } = barLines(bar, at === shown.length - 1);
    return `${before}${writeBar(bar, context)} ${after}`;
  });
  return lines(texts);
}

function barLines(
  { opens, closes }: WrittenBar,
  isLast: boolean,
): { readonly before: string; readonly after: string } {
  const after = isLast ? '|]' : '|';
  return { before: opens ? '|:' : '', after: closes > 0 ? ':|' : after };
}

function lines(bars: readonly string[]): readonly string[] {
  return Array.from({ length: Math.ceil(bars.length / BARS_A_LINE) }, (_, line) =>
    bars.slice(line * BARS_A_LINE, (line + 1) * BARS_A_LINE).join(' '),
  );
}

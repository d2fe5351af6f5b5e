import { type HarpLike, toHarp } from '@reedplate/layout';
import { type LineOptions, readLine } from '@reedplate/line';
import { deepFreeze, type OptionNames, requireInteger, requireOptions } from '@reedplate/pitch';
import type { TabDialectId } from '@reedplate/tab';
import { readAbc } from '../abc/read-abc.js';
import { choosePart } from '../choose-part.js';
import { decodeText } from '../decode-text.js';
import type { FileInput } from '../file-bytes.js';
import { type ReadMidiOptions, readMidi } from '../midi/read-midi.js';
import { readMusicXml } from '../musicxml/read-musicxml.js';
import type { ReadNotationOptions } from '../notation/assemble-piece.js';
import type { Piece } from '../piece.js';
import { readTab } from '../tab/read-tab.js';
import { detectFormat, type PieceFormatId, requireFormat } from './formats.js';

/** How a file of any format is read. */
export interface ReadPieceOptions extends ReadNotationOptions, ReadMidiOptions {
  /** Default what {@link detectFormat} finds. */
  readonly format?: PieceFormatId;
  /** Tune of a file with several, from 1; default 1. */
  readonly tune?: number;
  /** Harp that tablature is written for; needed for it alone. */
  readonly harp?: HarpLike;
  /** Dialect of tablature; default what `detectTab` finds. */
  readonly dialect?: TabDialectId;
  /** Metre, pickup, tempo and title of tablature, where it does not say them, or in their place. */
  readonly tabHead?: LineOptions;
}

const READ_PIECE_OPTIONS: OptionNames<ReadPieceOptions> = {
  repeats: true,
  part: true,
  bends: true,
  feel: true,
  format: true,
  tune: true,
  harp: true,
  dialect: true,
  tabHead: true,
};

/**
 * Reads a piece in any format that is read here.
 *
 * @throws ReedplateError `FORMAT_UNKNOWN`, and what the format's own reader throws; `HARP_MISSING` for
 * tablature without a harp, `NUMBER_RANGE` for a tune and `OPTION_UNKNOWN` for a part that is not there
 * @example
 * ```ts
 * import { makeHarp } from '@reedplate/layout';
 * import { readPiece } from '@reedplate/interchange';
 *
 * readPiece('X:1\nL:1/4\nM:4/4\nK:G\nG4|]').line.notes[0]?.pitch; // => 67
 * readPiece("-2:2 -3'", { harp: makeHarp('C') }).line.notes[1]; // => { start: 1920, duration: 960, pitch: 70 }
 * readPiece('-2'); // throws HARP_MISSING
 * ```
 */
export function readPiece(input: FileInput, options: ReadPieceOptions = {}): Piece {
  requireOptions(options, READ_PIECE_OPTIONS, 'readPiece');
  const format = options.format === undefined ? detectFormat(input) : requireFormat(options.format);
  const piece = READERS[format](input, options);
  // A line and tablature have one part, which may be asked for as well; another is refused.
  if (piece.choice === undefined) choosePart(piece.parts, options.part, () => undefined);
  return piece;
}

type PieceReader = (input: FileInput, options: ReadPieceOptions) => Piece;

const READERS: Readonly<Record<PieceFormatId, PieceReader>> = {
  line: (input) => pieceOf(readLine(decodeText(input))),
  midi: (input, { part, bends, feel }) =>
    readMidi(input as Uint8Array, definedOf({ part, bends, feel })),
  musicxml: (input, { repeats, part }) => readMusicXml(input, definedOf({ repeats, part })),
  abc: readAbcTune,
  tab: (input, { harp, dialect, tabHead }) =>
    readTab(decodeText(input), {
      harp: harp === undefined ? undefined : toHarp(harp),
      dialect,
      tabHead,
    }),
};

/** Without the options that were not given. */
function definedOf<Given extends object>(options: Given): Defined<Given> {
  const given = Object.entries(options).filter(([, value]) => value !== undefined);
  return Object.fromEntries(given) as Defined<Given>;
}

type Defined<Given> = { [Name in keyof Given]?: Exclude<Given[Name], undefined> };

function readAbcTune(input: FileInput, options: ReadPieceOptions): Piece {
  const { tune = 1, repeats, part } = options;
  const pieces = readAbc(input, definedOf({ repeats, part }));
  const what = 'the number of a tune in this file';
  return pieces[requireInteger(tune, { min: 1, max: pieces.length, what }) - 1] as Piece;
}

function pieceOf(line: Piece['line']): Piece {
  return deepFreeze({ line, parts: [{ name: line.title ?? '', line }], warnings: [] });
}

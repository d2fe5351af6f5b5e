import type { HarpLike, PlayerLike, Sounding } from '@reedplate/layout';
import { type OptionNames, ReedplateError, requireOptions } from '@reedplate/pitch';
import type { TabDialectId } from '@reedplate/tab';
import { writeAbc } from '../abc/write-abc.js';
import type { FileBytes } from '../file-bytes.js';
import { writeMidi } from '../midi/write-midi.js';
import { type WriteNotationOptions, writeMusicXml } from '../musicxml/write-musicxml.js';
import { titled } from '../notation/titled.js';
import type { Sheet } from '../piece.js';
import { requireSheet } from '../require-sheet.js';
import { writeTab } from '../tab/write-tab.js';
import { type PieceFormatId, requireFormat } from './formats.js';
import { tabLyrics } from './tab-lyrics.js';

/** How a sheet is written in any format. */
export interface WritePieceOptions {
  /** Harp that it is played on: tab stands under the notes of scores. Tablature needs it. */
  readonly harp?: HarpLike;
  /** Who plays, by a level or as a `Player`; default `bends`. */
  readonly level?: PlayerLike;
  /** Dialect of tab; default `plus-minus`. */
  readonly dialect?: TabDialectId;
  /** What sounds each event of the line, as a path or a practice line has chosen it. */
  readonly soundings?: readonly (readonly Sounding[])[];
  /** Title; default that of the line. */
  readonly title?: string;
  /** What stands over the first bar of a score besides tempo and feel: the harp and its position, say. */
  readonly subtitle?: string;
}

const WRITE_PIECE_OPTIONS: OptionNames<WritePieceOptions> = {
  harp: true,
  level: true,
  dialect: true,
  soundings: true,
  title: true,
  subtitle: true,
};

/**
 * Writes a sheet in any format that is written here: bytes of a MIDI file, text of the others.
 *
 * @throws ReedplateError `FORMAT_UNKNOWN`, and what the format's own writer throws; `HARP_MISSING` for
 * tablature without a harp, `SOUNDING_IMPOSSIBLE` for a note that the harp does not have
 * @example
 * ```ts
 * import { makeHarp } from '@reedplate/layout';
 * import { makeLine } from '@reedplate/line';
 * import { writePiece } from '@reedplate/interchange';
 *
 * const line = makeLine([{ start: 0, duration: 1920, pitch: 67 }]);
 * writePiece({ line }, 'tab', { harp: makeHarp('C') }); // => '-2:2\n'
 * writePiece({ line }, 'tab'); // throws HARP_MISSING
 * ```
 */
export function writePiece(
  sheet: Sheet,
  format: PieceFormatId,
  options: WritePieceOptions = {},
): string | FileBytes {
  requireOptions(options, WRITE_PIECE_OPTIONS, 'writePiece');
  return WRITERS[requireFormat(format)](requireSheet(sheet), options);
}

type PieceWriter = (sheet: Sheet, options: WritePieceOptions) => string | FileBytes;

const WRITERS: Readonly<Record<PieceFormatId, PieceWriter>> = {
  line: (sheet, { title }) => `${JSON.stringify(titled(sheet, title).line, null, 2)}\n`,
  midi: (sheet, { title }) => writeMidi(titled(sheet, title)),
  musicxml: (sheet, options) => writeMusicXml(sheet, notationOptions(sheet, options)),
  abc: (sheet, options) => writeAbc(sheet, notationOptions(sheet, options)),
  tab: writeTabPiece,
};

function notationOptions(
  { line }: Sheet,
  { harp, title, subtitle, ...options }: WritePieceOptions,
): WriteNotationOptions {
  return {
    ...(harp === undefined ? {} : { words: tabLyrics(line, harp, options) }),
    ...(title === undefined ? {} : { title }),
    ...(subtitle === undefined ? {} : { subtitle }),
  };
}

function writeTabPiece(sheet: Sheet, { harp, ...options }: WritePieceOptions): string {
  if (harp !== undefined) return writeTab(sheet, harp, options);
  const expected = 'a harp besides: tablature says holes, not notes';
  throw new ReedplateError({ code: 'HARP_MISSING', value: 'tab', expected });
}

import type { Harp, TechniqueLevel } from '@reedplate/layout';
import { ReedplateError } from '@reedplate/pitch';
import { formatTimedTab, type TabDialectId, tabOfLine } from '@reedplate/tab';
import { writeAbc } from '../abc/write-abc.js';
import type { FileBytes } from '../file-bytes.js';
import { writeMidi } from '../midi/write-midi.js';
import { writeMusicXml } from '../musicxml/write-musicxml.js';
import type { Sheet } from '../piece.js';
import { type PieceFormatId, requireFormat } from './formats.js';
import { tabWords } from './tab-words.js';

/** How a sheet is written in any format. */
export interface WritePieceOptions {
  /** Harp that it is played on: tab stands under the notes of scores. Tablature needs it. */
  readonly harp?: Harp;
  /** What the player can do; default `overbends`. */
  readonly level?: TechniqueLevel;
  /** Dialect of tab; default `sign`. */
  readonly dialect?: TabDialectId;
}

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
  return WRITERS[requireFormat(format)](sheet, options);
}

type PieceWriter = (sheet: Sheet, options: WritePieceOptions) => string | FileBytes;

const WRITERS: Readonly<Record<PieceFormatId, PieceWriter>> = {
  line: ({ line }) => `${JSON.stringify(line, null, 2)}\n`,
  midi: (sheet) => writeMidi(sheet),
  musicxml: (sheet, options) => writeMusicXml(sheet, wordsOf(sheet, options)),
  abc: (sheet, options) => writeAbc(sheet, wordsOf(sheet, options)),
  tab: writeTab,
};

function wordsOf(
  { line }: Sheet,
  { harp, ...options }: WritePieceOptions,
): { readonly words?: readonly string[] } {
  return harp === undefined ? {} : { words: tabWords(line, harp, options) };
}

function writeTab({ line }: Sheet, { harp, level, dialect }: WritePieceOptions): string {
  if (harp === undefined) {
    const expected = 'a harp besides: tablature says holes, not notes';
    throw new ReedplateError({ code: 'HARP_MISSING', value: 'tab', expected });
  }
  const timed = tabOfLine(line, harp, level === undefined ? {} : { level });
  return `${formatTimedTab(timed, dialect === undefined ? {} : { dialect })}\n`;
}

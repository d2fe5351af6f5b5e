import { readInFile } from '@reedplate/files';
import {
  detectFormat,
  formatOfName,
  type Piece,
  type PieceFormatId,
  type PieceWarning,
  type ReadPieceOptions,
  readPiece,
  type Sheet,
  unsupportedIn,
  type WritePieceOptions,
  writePiece,
} from '@reedplate/interchange';
import { kindOfFile } from '@reedplate/pitch';
import type { Terminal } from '../terminal.js';

/** What verbs that read a line say of their file. */
export const LINE_FILE = 'file of the line: JSON, MIDI, MusicXML, ABC or tab; - for standard input';

/** What readers of files need of the terminal. */
export type PieceTerminal = Pick<Terminal, 'readBytes' | 'err'>;

/**
 * Reads a piece from a file of any format, `-` for standard input, and says on standard error what
 * was left out.
 *
 * @throws ReedplateError what `readPiece` and reading the file throw, with `where.file`
 */
export function readPieceFile(
  file: string,
  terminal: PieceTerminal,
  options: ReadPieceOptions = {},
): Piece {
  return readPieceAndFormat(file, terminal, options).piece;
}

/** The same, with the format that the file was found to have. */
export function readPieceAndFormat(
  file: string,
  terminal: PieceTerminal,
  options: ReadPieceOptions = {},
): { readonly piece: Piece; readonly format: PieceFormatId } {
  return readPieceBytes(terminal.readBytes(file), file, terminal, options);
}

/** The same, of a file whose bytes have been read. */
export function readPieceBytes(
  bytes: Uint8Array,
  file: string,
  terminal: Pick<Terminal, 'err'>,
  options: ReadPieceOptions = {},
): { readonly piece: Piece; readonly format: PieceFormatId } {
  const read = readInFile(file, () => {
    const format = options.format ?? formatOf(bytes, file);
    return { format, piece: readPiece(bytes, { ...options, format }) };
  });
  for (const warning of read.piece.warnings) {
    terminal.err(`reedplate: ${sayWarning(file, warning)}\n`);
  }
  return read;
}

/** What a file holds; where that says nothing, what its name says, so that its reader names the fault. */
function formatOf(bytes: Uint8Array, file: string): PieceFormatId {
  try {
    return detectFormat(bytes);
  } catch (error) {
    const isText = bytes.length > 0 && kindOfFile(bytes) === undefined;
    if (isText && HAS_ENDING.test(file)) return formatOfName(file);
    throw error;
  }
}

/** Endings of text whose readers say in which line it fails; what else there is is known by its bytes. */
const HAS_ENDING = /\.(?:tab|abc|json|musicxml)$/iu;

function sayWarning(file: string, { message, count, value, where }: PieceWarning): string {
  const place = Object.entries(where).map(([name, at]) => `${name} ${at}`);
  const shown = value === undefined ? '' : `: ${JSON.stringify(value)}`;
  const times = count === 1 ? '' : ` (${count} times)`;
  return [`${file}: ${message}${shown}${times}`, ...place].join(', ');
}

/** How a piece is written to a file. */
export interface WriteFileOptions extends WritePieceOptions {
  /** Format; default the one that the name of the file asks for. */
  readonly to?: PieceFormatId;
}

/**
 * Writes a sheet to a file, `-` for standard output, and says on standard error what the format does
 * not hold.
 *
 * @returns the format
 * @throws ReedplateError what `formatOfName`, `writePiece` and writing the file throw
 */
export function writePieceFile(
  sheet: Sheet,
  file: string,
  terminal: Pick<Terminal, 'writeBytes' | 'err'>,
  { to = formatOfName(file, { to: 'write' }), ...options }: WriteFileOptions = {},
): PieceFormatId {
  terminal.writeBytes(file, bytesOf(writePiece(sheet, to, options)));
  const { harp, level } = options;
  const tab = {
    ...(harp === undefined ? {} : { harp }),
    ...(level === undefined ? {} : { level }),
  };
  for (const loss of unsupportedIn(sheet, to, tab))
    terminal.err(`reedplate: ${sayWarning(file, loss)}\n`);
  return to;
}

function bytesOf(written: string | Uint8Array): Uint8Array {
  return typeof written === 'string' ? new TextEncoder().encode(written) : written;
}

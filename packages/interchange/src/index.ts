/**
 * Other people's formats, in and out: ABC, MIDI files, MusicXML, tablature.
 *
 * @packageDocumentation
 */

// ABC
export { type ReadAbcOptions, readAbc } from './abc/read-abc.js';
export type { AccidentalReach } from './abc/voice.js';
export { type WriteAbcOptions, writeAbc } from './abc/write-abc.js';
// Files
export type { FileBytes, FileInput } from './file-bytes.js';
// Any format
export {
  detectFormat,
  type FormatOfNameOptions,
  formatOfName,
  PIECE_FORMAT_IDS,
  PIECE_FORMATS,
  type PieceFormat,
  type PieceFormatId,
} from './formats/formats.js';
export { type ReadPieceOptions, readPiece } from './formats/read-piece.js';
export { type TabLyricsOptions, tabLyrics } from './formats/tab-lyrics.js';
export { type LossesOptions, unsupportedIn } from './formats/unsupported-in.js';
export { type WritePieceOptions, writePiece } from './formats/write-piece.js';
// MIDI files
export { HARMONICA_PROGRAM } from './midi/melody-clues.js';
export { type ReadMidiOptions, readMidi } from './midi/read-midi.js';
export { type WriteMidiOptions, writeMidi } from './midi/write-midi.js';
// MusicXML
export { readMusicXml } from './musicxml/read-musicxml.js';
export { type WriteNotationOptions, writeMusicXml } from './musicxml/write-musicxml.js';
export type { ReadNotationOptions } from './notation/assemble-piece.js';
// What readers give and writers take
export { PART_REASONS, type PartChoice, type PartReason, sayPartChoice } from './part-choice.js';
export type { Piece, PiecePart, Sheet } from './piece.js';
// Quantising
export { GRID_IDS, GRIDS, type GridId, type QuantiseOptions, quantiseLine } from './quantise.js';
export {
  type PartSummary,
  type PieceSummary,
  summarisePiece,
} from './summarise-piece.js';
// Feel
export { applySwing, removeSwing, type SwingOptions } from './swing.js';
// Tablature
export { type WriteTabOptions, writeTab } from './tab/write-tab.js';
export { PIECE_WARNINGS, type PieceWarning, type PieceWarningCode } from './warning.js';

/**
 * Other people's formats, in and out: ABC, MIDI files, MusicXML, tablature.
 *
 * @packageDocumentation
 */

// ABC
export { type ReadAbcOptions, readAbc } from './abc/read-abc.js';
export type { AccidentalReach } from './abc/voice.js';
// What readers give
export type { Part, Piece } from './piece.js';
export type { ReadScoreOptions } from './score/assemble-piece.js';
export { WARNING_CODES, type Warning, type WarningCode } from './warning.js';

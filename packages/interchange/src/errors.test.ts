import { makeHarp } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { type ErrorCode, isReedplateError, type ReedplateError } from '@reedplate/pitch';
import { zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { readAbc } from './abc/read-abc.js';
import { writeAbc } from './abc/write-abc.js';
import { detectFormat, formatOfName, type PieceFormatId } from './formats/formats.js';
import { readPiece } from './formats/read-piece.js';
import { tabLyrics } from './formats/tab-lyrics.js';
import { unsupportedIn } from './formats/unsupported-in.js';
import { writePiece } from './formats/write-piece.js';
import { END, midiFile } from './midi/midi-bytes.fixture.js';
import { readMidi } from './midi/read-midi.js';
import { writeMidi } from './midi/write-midi.js';
import { readMusicXml } from './musicxml/read-musicxml.js';
import { writeMusicXml } from './musicxml/write-musicxml.js';
import { GRID_IDS, type GridId, quantiseLine } from './quantise.js';
import { applySwing } from './swing.js';

const harp = makeHarp('C');
const line = makeLine([{ start: 0, duration: 960, pitch: 67 }]);
const at = (pitch: number, start = 0) => makeLine([{ start, duration: 960, pitch }]);
const encode = (text: string): Uint8Array => new TextEncoder().encode(text);
const large = 'x'.repeat(17 * 1024 * 1024);

function failure(run: () => unknown): ReedplateError {
  try {
    run();
  } catch (error) {
    if (isReedplateError(error)) return error;
    throw error;
  }
  throw new Error('nothing was thrown');
}

type Case = readonly [what: string, run: () => unknown, where?: ReedplateError['where']];

/** What each error of this package is met with, and where it says it is. */
const MET: Readonly<Partial<Record<ErrorCode, readonly Case[]>>> = {
  ABC_SYNTAX: [
    ['text without a tune', () => readAbc('words'), { line: 1 }],
    ['bytes without a tune', () => readPiece(encode('words'), { format: 'abc' }), { line: 1 }],
  ],
  MIDI_MALFORMED: [
    ['another file', () => readMidi(encode('words')), { index: 0 }],
    ['text for bytes', () => readPiece('words', { format: 'midi' }), { index: 0 }],
    ['a file without a track', () => readMidi(midiFile([])), { index: 14 }],
    ['no ticks to the quarter', () => readMidi(midiFile([END], 0)), { index: 12 }],
  ],
  MUSICXML_MALFORMED: [
    [
      'XML that is cut short',
      () => readMusicXml('<score-partwise>\n <part'),
      { line: 2, column: 7 },
    ],
    ['another document', () => readMusicXml('<html/>'), {}],
    ['an archive without a score', () => readMusicXml(zipSync({ 'a.txt': encode('x') })), {}],
    [
      'an entity of its own',
      () => readMusicXml('<!DOCTYPE a [<!ENTITY b "c">]><a>&b;</a>'),
      { line: 1, column: 37 },
    ],
  ],
  FILE_TOO_LARGE: [
    ['text', () => readAbc(large), {}],
    ['bytes of MIDI', () => readMidi(new Uint8Array(17 * 1024 * 1024)), {}],
    ['a score', () => readMusicXml(large), {}],
    ['a score that grows', () => readMusicXml(zipSync({ 'a.xml': encode(large) })), {}],
    ['any file', () => detectFormat(large), {}],
    ['bars of rest', () => readAbc(`X:1\nK:C\n${'Z999|'.repeat(60)}`), { line: 3, column: 251 }],
  ],
  FORMAT_UNKNOWN: [
    ['a name', () => formatOfName('sheet.pdf')],
    ['a name to write to', () => formatOfName('sheet.mxl', { to: 'write' })],
    ['what is in it', () => detectFormat('Dear reader')],
    ['a format to read', () => readPiece('', { format: 'pdf' as PieceFormatId })],
    ['a format to write', () => writePiece({ line }, 'pdf' as PieceFormatId)],
    ['a format to ask of', () => unsupportedIn({ line }, 'pdf' as PieceFormatId)],
    ['no text and no bytes', () => readAbc(7 as unknown as string)],
  ],
  JSON_MALFORMED: [['JSON that is cut short', () => readPiece('{"notes": [')]],
  LINE_INVALID: [
    ['JSON that is no line', () => readPiece('{"notes": 7}'), { path: 'notes' }],
    ['a list', () => readPiece('[1, 2]'), {}],
    ['a line of years', () => writeMusicXml({ line: at(60, 2 ** 39) })],
    ['a line of years in ABC', () => writeAbc({ line: at(60, 2 ** 39) })],
  ],
  TAB_SYNTAX: [
    [
      'a word',
      () => readPiece('-2 x4', { format: 'tab', harp, dialect: 'plus-minus' }),
      { line: 1, column: 4 },
    ],
    ['no dialect', () => readPiece('-2 ?', { format: 'tab', harp }), { line: 1, column: 4 }],
  ],
  HARP_MISSING: [
    ['tablature to read', () => readPiece('-2 +4')],
    ['tablature to write', () => writePiece({ line }, 'tab')],
  ],
  SOUNDING_IMPOSSIBLE: [
    ['a note below the harp', () => tabLyrics(at(40, 3840), harp), { bar: 2 }],
    ['a note that wants a bend', () => tabLyrics(at(70), harp, { level: 'natural' }), { bar: 1 }],
    ['a bend that no reed gives', () => readPiece("-2'''", { harp }), { hole: 2, breath: 'draw' }],
  ],
  PITCH_RANGE: [['a note below C0', () => writeMusicXml({ line: at(11) })]],
  OPTION_UNKNOWN: [
    ['a part', () => readMidi(writeMidi({ line }), { part: 7 })],
    ['a part by name', () => readMusicXml(writeMusicXml({ line }), { part: 'Drums' })],
    ['a reach of accidentals', () => readAbc('X:1\nK:C\nA', { accidentals: 'bar' as 'pitch' })],
    ['a grid', () => quantiseLine(line, { grid: '1/9' as GridId })],
    ['a dialect', () => writePiece({ line }, 'tab', { harp, dialect: 'valueOf' as 'plus-minus' })],
  ],
  LIST_EMPTY: [['no grid', () => quantiseLine(line, { grid: [] })]],
  NUMBER_RANGE: [
    ['a tune', () => readPiece('X:1\nK:C\nA', { tune: 2 })],
    ['the number of a tune', () => writeAbc({ line }, { number: 0 })],
    ['a ratio', () => applySwing(line, { ratio: 9 })],
    ['a swing', () => quantiseLine(line, { swing: 0 })],
  ],
};

describe('errors', () => {
  const cases = Object.entries(MET).flatMap(([code, all]) =>
    all.map(([what, run, where]) => [code, what, run, where] as const),
  );

  test.each(cases)('%s is thrown for %s, and says what was expected', (code, _, run, where) => {
    const error = failure(run);
    expect(error.code).toBe(code);
    expect(error.expected.length).toBeGreaterThan(3);
    expect(error.message).not.toMatch(/undefined|\[object/u);
    if (where !== undefined) expect(error.where).toEqual(where);
  });

  test('an error names the nearest choice of a name', () => {
    expect(failure(() => readPiece('', { format: 'mid' as PieceFormatId })).nearest).toBe('midi');
    expect(failure(() => quantiseLine(line, { grid: '1/8x' as GridId })).nearest).toBe('1/8');
    expect(GRID_IDS).toContain('1/8');
  });

  test('no reader throws for what is merely empty of notes', () => {
    expect(readAbc('X:1\nK:C\n')[0]?.line.notes).toEqual([]);
    expect(readMidi(midiFile([END])).line.notes).toEqual([]);
    expect(readMusicXml('<score-partwise/>').line.notes).toEqual([]);
  });
});

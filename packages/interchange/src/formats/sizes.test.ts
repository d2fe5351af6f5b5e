import { isReedplateError } from '@reedplate/pitch';
import { describe, expect, test } from 'vitest';
import { END, message, midiFile, text, variable } from '../midi/midi-bytes.fixture.js';
import { readPiece } from './read-piece.js';
import { writePiece } from './write-piece.js';

/** Kilobytes that a file becomes as a score, or the code of what refuses it. */
function scoreOf(file: Uint8Array): number | string {
  try {
    return Math.ceil(writePiece(readPiece(file), 'musicxml').length / 1024);
  } catch (error) {
    if (!isReedplateError(error)) throw error;
    return error.code;
  }
}

const FAR = 96 * 4 * 19_000;
const CHORD = text(0x06, 'G7');

describe('writePiece of a small MIDI file', () => {
  test('writePiece refuses a score of 19,000 bars for two notes', () => {
    const late = [...message(0, 0x90, 60, 80), ...message(96, 0x80, 60, 0)];
    const later = [...message(FAR, 0x90, 60, 80), ...message(96, 0x80, 60, 0), ...END];
    expect(scoreOf(midiFile([[...late, ...later]]))).toBe('LINE_INVALID');
  });

  test('writePiece refuses a score of notes held through 19,000 bars', () => {
    const held = Array.from({ length: 80 }, (_, at) => message(1, 0x90, at + 12, 80)).flat();
    expect(scoreOf(midiFile([[...held, ...variable(FAR), 0xff, 0x2f, 0]]))).toBe('LINE_INVALID');
  });

  test('writePiece writes one chord for a thousand bars at most, and takes no megabyte for it', () => {
    const chord = [...CHORD, ...message(0, 0x90, 60, 80), ...message(96, 0x80, 60, 0)];
    const kilobytes = scoreOf(midiFile([[...chord, ...variable(FAR), 0xff, 0x2f, 0]]));
    expect(kilobytes).toBeLessThan(1024);
  });
});

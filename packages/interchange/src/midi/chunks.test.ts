import { isReedplateError } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { makeWarningList } from '../warning.js';
import { type MidiChunks, readChunks } from './chunks.js';
import { chunk, END, midiFile, number } from './midi-bytes.fixture.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

const head = (format: number, tracks: number, division: number): readonly number[] =>
  chunk('MThd', [...number(format, 2), ...number(tracks, 2), ...number(division, 2)]);
const bytes = (...parts: readonly (readonly number[])[]): Uint8Array =>
  Uint8Array.from(parts.flat());

function read(input: Uint8Array): MidiChunks & { readonly warned: readonly string[] } {
  const warnings = makeWarningList();
  const chunks = readChunks(input, warnings);
  return { ...chunks, warned: warnings.all().map(({ code }) => code) };
}

function failure(input: unknown): unknown {
  try {
    return readChunks(input as Uint8Array, makeWarningList());
  } catch (error) {
    return error;
  }
}

const track = chunk('MTrk', END);

describe('readChunks', () => {
  test.each([0, 1, 2])('readChunks reads files of format %i', (format) => {
    const { format: found, tracks } = read(bytes(head(format, 1, 96), track));
    expect([found, tracks.length, [...(tracks[0] ?? [])]]).toEqual([format, 1, [...END]]);
  });

  test('readChunks counts 960 ticks to the quarter, whatever the file counts', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 0x7fff }), (division) => {
        const { ticksPerFileTick } = read(midiFile([END], division));
        expect(ticksPerFileTick * division).toBeCloseTo(960, 9);
      }),
    );
  });

  // Frames a second as a negative number in the upper byte: Standard MIDI Files 1.0 (value from memory).
  test.each([
    [24, 4],
    [25, 40],
    [29, 80],
    [30, 100],
  ])('readChunks takes half a second for a quarter at %i frames of %i ticks', (frames, ticks) => {
    const division = ((256 - frames) << 8) | ticks;
    const half = (frames * ticks) / 2;
    expect(read(midiFile([END], division)).ticksPerFileTick * half).toBeCloseTo(960, 9);
  });

  test('readChunks reads as many tracks as there are, whatever the head says', () => {
    expect(read(bytes(head(1, 1, 96), track, track, track)).tracks.length).toBe(3);
    expect(read(bytes(head(1, 9, 96), track)).tracks.length).toBe(1);
  });

  test('readChunks passes over chunks of other kinds, and a head longer than six bytes', () => {
    const alien = chunk('XFIH', [1, 2, 3]);
    const long = chunk('MThd', [0, 1, 0, 1, 0, 96, 7, 7]);
    const { tracks, warned } = read(bytes(long, alien, track, alien));
    expect([tracks.length, warned]).toEqual([1, []]);
  });

  test('readChunks finds the file inside a RIFF file', () => {
    const inside = midiFile([END]);
    const riff = bytes(
      [...'RIFF'].map((sign) => sign.charCodeAt(0)),
      number(inside.length + 12, 4),
      [...'RMIDdata'].map((sign) => sign.charCodeAt(0)),
      number(inside.length, 4),
      [...inside],
    );
    expect(read(riff).tracks.length).toBe(1);
  });

  test('readChunks keeps a last track that is cut short, with a warning of where it begins', () => {
    const cut = midiFile([[0, 0x90, 60, 64, ...END]]).subarray(0, 24);
    const warnings = makeWarningList();
    const { tracks } = readChunks(cut, warnings);
    expect([...(tracks[0] ?? [])]).toEqual([0, 0x90]);
    expect(warnings.all()).toMatchObject([{ code: 'data-malformed', where: { index: 14 } }]);
  });

  test('readChunks reads a view into larger bytes as if it stood alone', () => {
    const file = midiFile([END]);
    const around = new Uint8Array(file.length + 20).fill(0x4d);
    around.set(file, 10);
    expect(read(around.subarray(10, 10 + file.length)).tracks.length).toBe(1);
  });

  test.each([
    ['no bytes', new Uint8Array(0), 0],
    ['text', new TextEncoder().encode('MThd and then text'), 4],
    ['another file', new TextEncoder().encode('RIFF....WAVEfmt ....'), 0],
    ['no track', bytes(head(1, 0, 96)), 14],
    ['no ticks to the quarter', midiFile([END], 0), 12],
    ['no ticks to the frame', midiFile([END], 0xe200), 12],
    ['a head of 4 GB', bytes([0x4d, 0x54, 0x68, 0x64, 255, 255, 255, 255], [0, 1, 0, 1, 0, 96]), 4],
    ['a track of 4 GB', bytes(head(1, 1, 96), [0x4d, 0x54, 0x72, 0x6b, 255, 255, 255, 255, 0]), 18],
  ])('readChunks refuses %s, and says at which byte', (_, input, index) => {
    const error = failure(input);
    expect(error).toMatchObject({ code: 'MIDI_MALFORMED', where: { index } });
  });

  test.each([undefined, null, 'MThd', [77, 84], {}])('readChunks refuses %j, no bytes', (input) => {
    expect(failure(input)).toMatchObject({ code: 'MIDI_MALFORMED' });
  });

  test('readChunks refuses more than 1,024 tracks', () => {
    const many = bytes(head(1, 1025, 96), ...Array.from({ length: 1025 }, () => track));
    expect(failure(many)).toMatchObject({ code: 'MIDI_MALFORMED', value: 1025 });
  });

  test('readChunks reads a file or throws a typed error, for any bytes behind a good head', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 100 }), (tail) => {
        const found = failure(bytes(head(1, 1, 96), [...tail]));
        const isRead = Array.isArray((found as MidiChunks).tracks);
        expect(isRead || (isReedplateError(found) && found.code === 'MIDI_MALFORMED')).toBe(true);
      }),
      { numRuns: 500 },
    );
  });
});

import { makeChart } from '@reedplate/form';
import { makeHarp } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { makeBacking } from '../../../backing/src/index.js';
import { lines } from '../arbitraries.fixture.js';
import type { Sheet } from '../piece.js';
import { PIECE_FORMAT_IDS, type PieceFormatId } from './formats.js';
import { readPiece } from './read-piece.js';
import { unsupportedIn } from './unsupported-in.js';
import { writePiece } from './write-piece.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

const note = { start: 0, duration: 960, pitch: 67 };
const codes = (sheet: Sheet, format: PieceFormatId): readonly string[] =>
  unsupportedIn(sheet, format).map(({ code }) => code);

describe('unsupportedIn', () => {
  const band = makeBacking(makeChart('basic', 'G'));

  test.each([
    ['midi', []],
    ['musicxml', ['percussion-unwritten']],
    ['abc', ['percussion-unwritten', 'playing-unwritten']],
    ['line', ['chart-unwritten', 'parts-unwritten', 'head-unwritten']],
    ['tab', ['parts-unwritten']],
  ] as const)('unsupportedIn a band in the format %s are %j', (format, expected) => {
    expect(codes({ ...band, key: 'G', line: makeLine([note]) }, format)).toEqual(expected);
  });

  test('unsupportedIn counts the parts and names them, those without a name by number', () => {
    const part = (name: string) => ({ name, line: makeLine([note]) });
    const sheet: Sheet = { line: makeLine([note]), parts: [part('Bass'), part('')] };
    expect(unsupportedIn(sheet, 'line')).toMatchObject([
      { code: 'parts-unwritten', count: 2, value: 'Bass, part 2', where: {} },
    ]);
    const { line } = part('Bass');
    expect(unsupportedIn({ line, parts: [{ name: 'Bass', line }] }, 'line')).toEqual([]);
  });

  test('unsupportedIn says which notes struck together the harp has on no one breath, and in which bar', () => {
    const together = (start: number, ...pitches: readonly number[]) =>
      pitches.map((pitch) => ({ start, duration: 960, pitch }));
    // Draw 2 3 4 of a C harp; then draw 2 with blow 4 and 5, which no one plays at once.
    const line = makeLine([...together(0, 67, 71, 74), ...together(3840, 65, 72, 76)]);
    for (const format of ['tab', 'abc', 'musicxml'] as const) {
      expect(unsupportedIn({ line, key: 'F' }, format, { harp: 'C' })).toMatchObject([
        { code: 'notes-apart', count: 1, value: 'F4 C5 E5', where: { bar: 2 } },
      ]);
    }
    expect(unsupportedIn({ line }, 'midi', { harp: 'C' })).toEqual([]);
    expect(unsupportedIn({ line }, 'tab')).toEqual([]);
    expect(() => unsupportedIn({ line }, 'tab', { harps: 'C' } as object)).toThrow(/harp/u);
  });

  test('unsupportedIn names what tablature does not say of a piece', () => {
    const head = { title: 'Riff', tempo: 90, metre: '3/4', pickup: 960 } as const;
    expect(unsupportedIn({ line: makeLine([note], head), key: 'G' }, 'tab')).toEqual([]);
    const tempoChanges = [{ start: 960, tempo: 60 }];
    const slower = makeLine([note], { ...head, tempoChanges });
    expect(unsupportedIn({ line: slower }, 'tab')[0]?.value).toBe('tempoChanges');
  });

  const played = (more: object) => ({ line: makeLine([{ ...note, ...more }]) });
  const ALL = {
    velocity: 90,
    accent: true,
    grace: true,
    cents: 5,
    curve: [{ at: 0, cents: 9 }],
    confidence: 0.5,
  };

  test.each([
    ['midi', 'accent, grace, confidence, cents beside a curve'],
    ['line', undefined],
    ['tab', 'velocity, accent, grace, cents, curve, confidence'],
  ] as const)(
    'unsupportedIn names how notes are played where the format %s lacks it: %s',
    (format, lost) => {
      const found = unsupportedIn(played(ALL), format).find(
        ({ code }) => code === 'playing-unwritten',
      );
      expect(found?.value).toBe(lost);
      expect(unsupportedIn(played({}), format)).toEqual([]);
    },
  );

  test('unsupportedIn says of MIDI that notes which sound together are bent together', () => {
    const lost = (...more: readonly object[]) => {
      const notes = more.map((each, at) => ({ ...note, pitch: 60 + at, ...each }));
      return unsupportedIn({ line: makeLine(notes) }, 'midi')[0]?.value;
    };
    const expected = 'bends of notes that sound together';
    expect(lost({ cents: 5 }, {})).toBe(expected);
    expect(lost({}, { start: 480, curve: [{ at: 0, cents: 5 }] })).toBe(expected);
    expect(lost({ duration: 4000 }, { start: 960, cents: 5 })).toBe(expected);
    expect(lost({ cents: 5 }, { start: 960 }, { start: 1920, cents: 7 })).toBeUndefined();
    expect(lost({}, {})).toBeUndefined();
  });

  test('unsupportedIn refuses an unknown format', () => {
    // @ts-expect-error: no such format
    expect(() => unsupportedIn({ line: makeLine([]) }, 'pdf')).toThrowError(
      expect.objectContaining({ code: 'FORMAT_UNKNOWN' }),
    );
  });

  test('where unsupportedIn names nothing, readPiece gives back the line that writePiece wrote', () => {
    const harp = makeHarp('C');
    const single = lines({ unit: 40, chords: false }).map((line) => {
      const scale = [60, 62, 64, 67, 71, 72, 74, 76, 79];
      const notes = line.notes.map((each) => ({ ...each, pitch: scale[each.pitch % 9] as number }));
      return makeLine(notes, line.title === undefined ? {} : { title: line.title });
    });
    fc.assert(
      fc.property(single, fc.constantFrom(...PIECE_FORMAT_IDS), (line, format) => {
        const read = readPiece(writePiece({ line }, format, { harp }), { harp }).line;
        const isKept = unsupportedIn({ line }, format).length === 0;
        // A writer of MIDI always says a tempo.
        const { tempo: _, ...kept } = read;
        expect(isKept ? kept : line).toEqual(line);
        expect(read.notes).toEqual(line.notes);
      }),
    );
  });
});

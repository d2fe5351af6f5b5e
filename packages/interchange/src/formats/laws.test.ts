import { FORMS, makeChart } from '@reedplate/form';
import { makeHarp } from '@reedplate/layout';
import { type Line, makeLine } from '@reedplate/line';
import { isReedplateError } from '@reedplate/pitch';
import { TAB_DIALECT_IDS } from '@reedplate/tab';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { lines, mutations } from '../arbitraries.fixture.js';
import { detectFormat, PIECE_FORMAT_IDS, type PieceFormatId } from './formats.js';
import { readPiece } from './read-piece.js';
import { writePiece } from './write-piece.js';

// A busy machine takes its time over hundreds of files.
vi.setConfig({ testTimeout: 60_000 });

const harp = makeHarp('C');
/** Notes that a C harp has: all from 3 blow to 9 blow, bends and overbends included. */
const playable = lines({ unit: 40, chords: false }).map((line): Line => {
  const notes = line.notes.map((note) => ({ ...note, pitch: 67 + (note.pitch % 25) }));
  return makeLine(notes, { metre: line.metre, pickup: line.pickup, tempo: 100 });
});
const headOf = ({ metre, pickup, tempo }: Line) => ({
  ...{ metre, pickup },
  ...(tempo === undefined ? {} : { tempo }),
});
/** Random lines have notes that only overbends reach. */
const level = 'overbends';
const formats = fc.constantFrom(...PIECE_FORMAT_IDS);

describe('laws of all formats', () => {
  test('a line goes through any two formats, one after the other, and comes back', () => {
    fc.assert(
      fc.property(playable, formats, formats, (line, first, second) => {
        const through = (format: PieceFormatId, from: Line): Line =>
          readPiece(writePiece({ line: from }, format, { harp, level }), {
            ...{ harp, format, tabHead: headOf(from) },
          }).line;
        expect(through(second, through(first, line))).toEqual(line);
      }),
      { numRuns: 150 },
    );
  });

  test('readPiece finds the format that writePiece wrote', () => {
    fc.assert(
      fc.property(playable, formats, (line, format) => {
        expect(detectFormat(writePiece({ line }, format, { harp, level }))).toBe(format);
      }),
    );
  });

  test('writePiece writes the same for the same sheet, frozen or copied', () => {
    fc.assert(
      fc.property(playable, formats, (line, format) => {
        const copy = JSON.parse(JSON.stringify(line)) as Line;
        expect(writePiece({ line: copy }, format, { harp, level })).toEqual(
          writePiece({ line }, format, { harp, level }),
        );
      }),
      { numRuns: 50 },
    );
  });

  test.each(['midi', 'musicxml', 'abc'] as const)(
    'readPiece keeps the chart of every form in %s',
    (format) => {
      for (const form of FORMS) {
        const chart = makeChart(form, form.mode === 'minor' ? 'Dm' : 'D', { tempo: 90 });
        const line = makeLine([{ start: chart.pickup, duration: 480, pitch: 69 }], {
          metre: chart.metre,
          pickup: chart.pickup,
        });
        const back = readPiece(writePiece({ line, chart }, format), { feel: chart.feel });
        expect(back.chart?.spans.map(({ start, chord }) => [start, chord?.symbol])).toEqual(
          chart.spans.map(({ start, chord }) => [start, chord?.symbol]),
        );
        expect([back.key, back.line.tempo]).toEqual([chart.key, 90]);
      }
    },
  );

  test.each(TAB_DIALECT_IDS)('readPiece undoes writePiece in the dialect %s', (dialect) => {
    fc.assert(
      fc.property(playable, (line) => {
        const text = writePiece({ line }, 'tab', { harp, level, dialect });
        const read = readPiece(text, { harp, format: 'tab', dialect, tabHead: headOf(line) });
        expect(read.line).toEqual(line);
      }),
      { numRuns: 50 },
    );
  });

  test('readPiece gives a piece or a typed error, for any file spoiled', () => {
    const line = makeLine(
      [67, 70, 72].map((pitch, at) => ({ start: at * 960, duration: 900, pitch })),
    );
    const spoiled = formats.chain((format) => {
      const written = writePiece({ line }, format, { harp, level });
      return mutations(typeof written === 'string' ? new TextEncoder().encode(written) : written);
    });
    fc.assert(
      fc.property(spoiled, (bytes) => {
        try {
          expect(readPiece(bytes, { harp }).line.notes.length).toBeGreaterThanOrEqual(0);
        } catch (error) {
          expect(isReedplateError(error), String(error)).toBe(true);
        }
      }),
      { numRuns: 500 },
    );
  });
});

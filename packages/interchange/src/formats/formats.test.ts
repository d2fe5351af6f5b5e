import { makeChart } from '@reedplate/form';
import { makeHarp } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { describe, expect, test } from 'vitest';
import type { Sheet } from '../piece.js';
import { detectFormat, formatOfName, PIECE_FORMAT_IDS, PIECE_FORMATS } from './formats.js';
import { readPiece } from './read-piece.js';
import { writePiece } from './write-piece.js';

const harp = makeHarp('C');
const line = makeLine(
  [
    { start: 0, duration: 960, pitch: 67 },
    { start: 960, duration: 480, pitch: 70 },
    { start: 2880, duration: 1440, pitch: 72 },
  ],
  { tempo: 96 },
);
const sheet: Sheet = { line, key: 'G', chart: makeChart('basic', 'G') };

describe('readPiece and writePiece', () => {
  test.each(PIECE_FORMAT_IDS)(
    'readPiece undoes writePiece in the format %s, found by itself',
    (format) => {
      const written = writePiece(sheet, format, { harp });
      expect(detectFormat(written)).toBe(format);
      const head = { harp, tabHead: { tempo: 96 }, feel: 'shuffle' } as const;
      expect(readPiece(written, head).line).toEqual(line);
      expect(readPiece(written, { ...head, format }).line).toEqual(line);
    },
  );

  test('readPiece keeps the chart where the format holds one', () => {
    for (const format of ['midi', 'musicxml', 'abc'] as const) {
      const { chart } = readPiece(writePiece(sheet, format));
      expect(chart?.spans.map(({ numeral }) => numeral)).toEqual(
        sheet.chart?.spans.map(({ numeral }) => numeral),
      );
    }
  });

  test('writePiece puts tab under the notes of scores where a harp is given', () => {
    for (const format of ['musicxml', 'abc'] as const) {
      expect(writePiece(sheet, format, { harp, dialect: 'arrows' })).toContain("3↓'");
      expect(writePiece(sheet, format)).not.toContain('3↓');
    }
  });

  test('readPiece takes a tune by its number, and a part by its name', () => {
    const book = 'X:1\nK:C\nC\n\nX:2\nK:C\nD\n';
    expect(readPiece(book, { tune: 2 }).line.notes[0]?.pitch).toBe(62);
    expect(() => readPiece(book, { tune: 3 })).toThrowError(/from 1 to 2/u);
    const voices = 'X:1\nK:C\nV:1 name=Low\nC\nV:2 name=High\nc\n';
    expect(readPiece(voices, { part: 'High' }).line.notes[0]?.pitch).toBe(72);
  });

  test('readPiece warns of tablature that can be read in another way', () => {
    const piece = readPiece('4 5:2', { harp });
    expect(piece.warnings).toMatchObject([
      { code: 'tab-ambiguous', value: expect.stringContaining('plain numbers') },
    ]);
    expect(readPiece('4 5:2', { harp, dialect: 'plus-only' })).toMatchObject({ warnings: [] });
  });

  test('readPiece and writePiece ask for a harp for tablature', () => {
    expect(() => readPiece('-2 +4')).toThrowError(/a harp besides/u);
    expect(() => writePiece(sheet, 'tab')).toThrowError(/a harp besides/u);
  });

  test('readPiece and writePiece refuse an unknown format with the nearest', () => {
    // @ts-expect-error: no such format
    expect(() => readPiece('', { format: 'mid' })).toThrowError(/did you mean midi\?/u);
    // @ts-expect-error: no such format
    expect(() => writePiece(sheet, 'toString')).toThrowError(/a format: line, midi/u);
  });
});

describe('formatOfName and detectFormat', () => {
  test('formatOfName finds a format by every ending, in capitals too', () => {
    for (const id of PIECE_FORMAT_IDS) {
      expect(PIECE_FORMATS[id].id).toBe(id);
      for (const ending of PIECE_FORMATS[id].endings) {
        expect(formatOfName(`a.b/tune${ending.toUpperCase()}`)).toBe(id);
      }
    }
    expect(() => formatOfName('tune')).toThrowError(/\.json, \.mid/u);
  });

  test.each(['{}', ' {"notes": 1}', '[]', '[1, 2]', '["a"]', '[[1]]', '"text"', '[1, 2', '[true]'])(
    'detectFormat knows JSON by its first sign: %j',
    (text) => {
      expect(detectFormat(text)).toBe('line');
      expect(() => readPiece(text)).toThrowError(
        expect.objectContaining({
          code: expect.stringMatching(/^(?:JSON_MALFORMED|LINE_INVALID)$/u),
        }),
      );
    },
  );

  test.each(['[-1 -2]:2 +4', '[4 5] 6', '(-1-2)', '4 5 6', '12'])(
    'detectFormat takes %j for tablature, brackets and all',
    (text) => {
      expect(detectFormat(text)).toBe('tab');
    },
  );

  test.each(['Dear reader', '', '12 bars'])('detectFormat refuses %j', (text) => {
    expect(() => detectFormat(text)).toThrowError(
      expect.objectContaining({ code: 'FORMAT_UNKNOWN' }),
    );
  });
});

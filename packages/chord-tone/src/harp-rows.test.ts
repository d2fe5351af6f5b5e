import { makeHarp, soundings, TECHNIQUE_LEVELS, TUNINGS } from '@reedplate/layout';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { harpRows } from './harp-rows.js';

const said = (options: Parameters<typeof harpRows>[1]) =>
  harpRows(makeHarp('C'), options).map(
    ({ breath, technique, depth, cells }) =>
      `${breath} ${technique} ${depth}: ${cells.map((cell) => cell?.name ?? '-').join(' ')}`,
  );

describe('harpRows', () => {
  // Common practice, no source for the picture; the notes are those of the standard layout (Wikipedia,
  // "Richter-tuned harmonica") and the rule of bends and overbends.
  test('harpRows lays the standard harp from overblows down to overdraws', () => {
    expect(said({ level: 'overbends' })).toEqual([
      'blow overblow 1: Eb Ab C Eb F# Bb - - - -',
      'blow bend 2: - - - - - - - - - Bb',
      'blow bend 1: - - - - - - - Eb F# B',
      'blow natural 0: C E G C E G C E G C',
      'draw natural 0: D G B D F A B D F A',
      'draw bend 1: Db F# Bb Db - Ab - - - -',
      'draw bend 2: - F A - - - - - - -',
      'draw bend 3: - - Ab - - - - - - -',
      'draw overdraw 1: - - - - - - Db F Ab Db',
    ]);
  });

  test('harpRows spells by the key of the song and by the chord', () => {
    expect(said({ key: 'E' }).find((row) => row.startsWith('blow bend 1'))).toBe(
      'blow bend 1: - - - - - - - D# F# B',
    );
    const [blow] = harpRows('C', { key: 'G', chord: 'C7', level: 'natural' });
    expect(blow?.cells.slice(0, 4).map((cell) => `${cell?.degree} ${cell?.tone}`)).toEqual([
      '4 1',
      '6 3',
      '1 5',
      '4 1',
    ]);
  });

  test('harpRows refuses an option that there is none of', () => {
    expect(() => harpRows('C', { kee: 'G' } as Parameters<typeof harpRows>[1])).toThrow(/key/u);
  });

  test('harpRows holds every sounding once, in the column of its hole', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...TUNINGS),
        fc.constantFrom(...TECHNIQUE_LEVELS),
        fc.boolean(),
        (tuning, level, valved) => {
          const harp = makeHarp('C', { tuning });
          const rows = harpRows(harp, { level, valved });
          const cells = rows.flatMap((row) => row.cells.flatMap((cell) => cell ?? []));
          const key = (each: { hole: number; pitch: number; technique: string }) =>
            `${each.hole} ${each.pitch} ${each.technique}`;
          expect(cells.map(({ sounding }) => key(sounding)).sort()).toEqual(
            soundings(harp, { level, valved }).map(key).sort(),
          );
          for (const row of rows) {
            expect(row.cells).toHaveLength(harp.holes.length);
            expect(row.cells.every((cell, at) => cell === null || cell.hole === at + 1)).toBe(true);
          }
        },
      ),
    );
  });
});

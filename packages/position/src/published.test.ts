import { makeHarp, soundingsOfPitch } from '@reedplate/layout';
import { parseKey, parseScale, TWELVE_KEYS, toPitchClass } from '@reedplate/pitch';
import { describe, expect, it } from 'vitest';
import { published } from '../../../test/sources/published.js';
import { harpKeyOf, POSITIONS, positionOf, scaleMap, songKeyOf } from './index.js';

describe('positions', () => {
  published('positions-post', 'position numbers', () => {
    // The circle of keys on a C harp, letter of July 1994 (message 19). It prints 8th twice, for Db
    // and for Ab, and no 7th: those two rows rest on "Squaring the circle of 5ths" below.
    it.each([
      ['C', 1],
      ['G', 2],
      ['D', 3],
      ['A', 4],
      ['E', 5],
      ['B', 6],
      ['Db', 8],
      ['Eb', 10],
      ['Bb', 11],
      ['F', 12],
    ])(
      'positionOf a song in %s on a C harp is %i: letter to the harmonica list, July 1994',
      (song, position) => {
        expect(positionOf('C', parseKey(song))).toBe(position);
        expect(harpKeyOf(parseKey(song), position).name).toBe('C');
      },
    );

    it('POSITIONS goes up by fifths: "numbered according to the cycle of fifths"', () => {
      const semitones = POSITIONS.map((position) => position.semitones);
      expect(semitones).toEqual(POSITIONS.map((_, fifths) => (fifths * 7) % 12));
    });
  });

  published('squaring-the-circle', 'position numbers and modes', () => {
    // The table of "Squaring the circle of 5ths": rows from Ionian 1st C to Lydian 12th F, five without a mode.
    it.each([
      [1, 'C', 'ionian'],
      [2, 'G', 'mixolydian'],
      [3, 'D', 'dorian'],
      [4, 'A', 'aeolian'],
      [5, 'E', 'phrygian'],
      [6, 'B', 'locrian'],
      [7, 'F#', undefined],
      [8, 'Db', undefined],
      [9, 'Ab', undefined],
      [10, 'Eb', undefined],
      [11, 'Bb', undefined],
      [12, 'F', 'lydian'],
    ])('position %i on a C harp is in %s, mode %s', (position, song, mode) => {
      expect(positionOf('C', parseKey(song))).toBe(position);
      expect(songKeyOf('C', position).name).toBe(song);
      expect(POSITIONS[position - 1]?.mode).toBe(mode);
    });
  });

  published('coble-post', 'modes and keys of positions', () => {
    // "1 Ionian (Starts on scale degree 1)" and so on, with their keys on a C harp.
    it.each([
      [1, 'C', 1],
      [2, 'G', 5],
      [3, 'D', 2],
      [4, 'A', 6],
      [5, 'E', 3],
      [6, 'B', 7],
      [12, 'F', 4],
    ])('position %i in %s begins on degree %i of the harp’s scale', (position, song, degree) => {
      expect(songKeyOf('C', position).name).toBe(song);
      const scale = parseScale('major').semitones;
      expect(scale[degree - 1]).toBe(POSITIONS[position - 1]?.semitones);
    });
  });

  published('wikibooks-positions', 'names of positions', () => {
    it('POSITIONS names straight harp and cross harp: Wikibooks, "Harmonica/Positions"', () => {
      expect(POSITIONS[0]?.tradeName).toBe('straight harp');
      expect(POSITIONS[1]?.tradeName).toBe('cross harp');
    });
  });

  published('modes-post', 'modes of positions', () => {
    it.each([
      [1, 'ionian'],
      [2, 'mixolydian'],
      [3, 'dorian'],
      [4, 'aeolian'],
      [5, 'phrygian'],
      [6, 'locrian'],
      [12, 'lydian'],
    ])(
      'unbent notes in position %i give %s: list post on positions and modes, March 2012',
      (position, mode) => {
        expect(POSITIONS[position - 1]?.mode).toBe(mode);
        const tonic = songKeyOf('C', position).pitchClass;
        const naturals = makeHarp('C').holes.flatMap(({ blow, draw }) => [blow, draw]);
        const degrees = new Set(naturals.map((pitch) => toPitchClass(pitch - tonic)));
        expect([...degrees].sort((a, b) => a - b)).toEqual(parseScale(mode).semitones);
      },
    );
  });

  published('computed', 'worked out', () => {
    it('no unbent note of a C harp is a tonic of the 7th to 11th position (computed)', () => {
      for (const { number, mode } of POSITIONS.filter((position) => position.mode === undefined)) {
        expect(mode).toBeUndefined();
        const map = scaleMap(makeHarp('C'), songKeyOf('C', number), 'minor pentatonic');
        expect(map.levels.natural.missing).toContain('1');
      }
    });

    // Which harp to pick up: computed from the numbering, printed so in most tables.
    it.each([
      ['C', 'C F Bb Eb Ab G'],
      ['E', 'E A D G C B'],
      ['G', 'G C F Bb Eb D'],
      ['A', 'A D G C F E'],
      ['Bb', 'Bb Eb Ab Db F# F'],
      ['F#', 'F# B E A D Db'],
    ])('harpKeyOf a song in %s gives %s in 1st to 5th and 12th (computed)', (song, harps) => {
      const keys = [1, 2, 3, 4, 5, 12].map(
        (position) => harpKeyOf(parseKey(song), position).pitchClass,
      );
      const expected = harps
        .split(' ')
        .map((name) => TWELVE_KEYS.find((key) => key.tonic === name));
      expect(keys).toEqual(expected.map((key) => key?.pitchClass));
    });
  });
});

describe('chords of the second position', () => {
  const tonesAt = (pitchClass: number): string[] => {
    const harp = makeHarp('C');
    const found: string[] = [];
    for (let pitch = 60 + pitchClass; pitch <= 96; pitch += 12) {
      for (const { hole, breath, technique } of soundingsOfPitch(harp, pitch)) {
        if (technique === 'natural') found.push(`${hole} ${breath}`);
      }
    }
    return found;
  };

  published('practice', 'the trade', () => {
    it('finds I on 2 draw and 3 blow, IV on 4 blow, V on 1 and 4 draw (common practice, no source)', () => {
      expect(tonesAt(7)).toEqual(expect.arrayContaining(['2 draw', '3 blow']));
      expect(tonesAt(0)).toContain('4 blow');
      expect(tonesAt(2)).toEqual(expect.arrayContaining(['1 draw', '4 draw']));
    });
  });
});

import { makeHarp } from '@reedplate/layout';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/sources/published.js';
import { harpMap, type MappedSounding } from './harp-map.js';
import { pickHarps } from './pick.js';
import { positionByNumber } from './positions.js';

/**
 * The standard layout in C. Unbent notes: Wikipedia, "Richter-tuned harmonica"; Wikibooks,
 * "Harmonica/Layouts and alternate tunings"; the same offsets in OEIS A291810 (2017). Bends: the
 * rule of the mailing-list post "Bending & overblows" (September 1994), a semitone above the lower
 * reed; the holes that bend as Physics Stack Exchange question 450238 names them. Overbends: a
 * semitone above the higher reed, common practice, no source.
 */
const PUBLISHED = {
  blow: ['C4', 'E4', 'G4', 'C5', 'E5', 'G5', 'C6', 'E6', 'G6', 'C7'],
  draw: ['D4', 'G4', 'B4', 'D5', 'F5', 'A5', 'B5', 'D6', 'F6', 'A6'],
  bends: [
    ["-1' Db4"],
    ["-2' F#4", "-2'' F4"],
    ["-3' Bb4", "-3'' A4", "-3''' Ab4"],
    ["-4' Db5"],
    [],
    ["-6' Ab5"],
    [],
    ["+8' Eb6"],
    ["+9' F#6"],
    ["+10' B6", "+10'' Bb6"],
  ],
  overbends: [
    '+1o Eb4',
    '+2o Ab4',
    '+3o C5',
    '+4o Eb5',
    '+5o F#5',
    '+6o Bb5',
    '-7o Db6',
    '-8o F6',
    '-9o Ab6',
    '-10o Db7',
  ],
} as const;

/** A sounding in signs, as the tables above have it. */
function signsOf({ hole, breath, technique, depth }: MappedSounding): string {
  const sign = breath === 'blow' ? '+' : '-';
  const isOverbend = technique === 'overblow' || technique === 'overdraw';
  return `${sign}${hole}${isOverbend ? 'o' : "'".repeat(depth)}`;
}

describe('harpMap against published tables', () => {
  const { holes } = harpMap(makeHarp('C'), { level: 'overbends' });
  const all = holes.map(({ soundings }) => soundings);

  published('wikipedia-richter', 'the standard layout', () => {
    test('harpMap of a C harp has the published unbent notes on ten holes', () => {
      expect(holes.map(({ hole }) => hole)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
      expect(all.map(([blow]) => blow?.name)).toEqual(PUBLISHED.blow);
      expect(all.map(([, draw]) => draw?.name)).toEqual(PUBLISHED.draw);
    });
  });

  published('bending-post', 'how far holes bend', () => {
    test('harpMap of a C harp has the twelve bends on their holes', () => {
      const bends = all.map((soundings) =>
        soundings
          .filter(({ technique }) => technique === 'bend')
          .map((sounding) => `${signsOf(sounding)} ${sounding.name}`),
      );
      expect(bends).toEqual(PUBLISHED.bends);
      expect(bends.flat()).toHaveLength(12);
    });
  });

  published('practice', 'overbends', () => {
    test('harpMap of a C harp has one overbend a hole', () => {
      const overbends = all.flatMap((soundings) =>
        soundings
          .filter(({ technique }) => technique === 'overblow' || technique === 'overdraw')
          .map((sounding) => `${signsOf(sounding)} ${sounding.name}`),
      );
      expect(overbends).toEqual(PUBLISHED.overbends);
    });
  });

  published('wikibooks-positions', 'names of positions', () => {
    test('harpMap gives the degrees of second position', () => {
      // Wikibooks, "Harmonica/Positions": second position gives the mixolydian scale.
      const { holes: inG } = harpMap(makeHarp('C'), { key: 'G' });
      const natural = inG.flatMap(({ soundings }) => soundings.slice(0, 2));
      expect(new Set(natural.map(({ degree }) => degree))).toEqual(
        new Set(['1', '2', '3', '4', '5', '6', 'b7']),
      );
    });
  });
});

describe('pickHarps against common practice', () => {
  published('wikibooks-positions', 'names of positions', () => {
    test('pickHarps puts the C harp in second position first for a song in G', () => {
      // Common practice: cross harp for a blues; the name after Wikibooks, "Harmonica/Positions".
      const [best] = pickHarps('G');
      expect(best?.position).toBe(2);
      expect(positionByNumber(2).tradeName).toBe('cross harp');
      expect(best?.harp.key).toBe('C');
    });
  });
});

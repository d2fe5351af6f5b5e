import { midi, parseKey, parseNoteName } from '@reedplate/pitch';
import { describe, expect, it } from 'vitest';
import { published } from '../../../test/sources/published.js';
import {
  type Breath,
  chordIntonation,
  type Harp,
  makeHarp,
  missingPitches,
  nameOnHarp,
  nearestRatio,
  ratioCents,
  readScala,
  reedsOf,
  soundings,
  soundingsAt,
  temperHarp,
} from './index.js';

const C_HARP = makeHarp('C');
const BREATHS: readonly Breath[] = ['blow', 'draw'];

const notes = (text: string): readonly number[] => text.split(' ').map(midi);
const rowOf = (harp: Harp, breath: Breath): readonly number[] =>
  harp.holes.map((hole) => hole[breath]);

/** Names without octave, as most tables print them. */
const namesOf = (harp: Harp, breath: Breath): string =>
  reedsOf(harp)
    .filter((reed) => reed.breath === breath)
    .map(({ name }) => name.replace(/\d+$/u, ''))
    .join(' ');

describe('the standard layout', () => {
  published('wikipedia-richter', 'the standard layout', () => {
    it('makeHarp gives the rows of Wikipedia, "Richter-tuned harmonica", from middle C', () => {
      expect(rowOf(C_HARP, 'blow')).toEqual(notes('C4 E4 G4 C5 E5 G5 C6 E6 G6 C7'));
      expect(rowOf(C_HARP, 'draw')).toEqual(notes('D4 G4 B4 D5 F5 A5 B5 D6 F6 A6'));
    });
  });

  published('oeis-layout', 'semitones of the layout', () => {
    it('makeHarp gives the semitones of OEIS A291810 (2017), blow and draw hole by hole', () => {
      const published = [0, 2, 4, 7, 7, 11, 12, 14, 16, 17, 19, 21, 24, 23, 28, 26, 31, 29, 36, 33];
      expect(C_HARP.holes.flatMap(({ blow, draw }) => [blow - 60, draw - 60])).toEqual(published);
    });
  });

  published('wikipedia-richter', 'the standard layout', () => {
    it('soundings has 19 notes from 20 reeds, as Wikipedia, "Richter-tuned harmonica", counts', () => {
      const natural = soundings(C_HARP, { level: 'natural' });
      expect(natural).toHaveLength(20);
      expect(new Set(natural.map(({ pitch }) => pitch)).size).toBe(19);
    });
  });

  published('wikibooks-layouts', 'rows of harps in six keys', () => {
    // Wikibooks, "Harmonica / Layouts and alternate tunings"; rows of keys that it prints in full and
    // without a misprint.
    it.each([
      ['C', 'C E G C E G C E G C', 'D G B D F A B D F A'],
      ['Db', 'Db F Ab Db F Ab Db F Ab Db', 'Eb Ab C Eb Gb Bb C Eb Gb Bb'],
      ['D', 'D F# A D F# A D F# A D', 'E A C# E G B C# E G B'],
      ['E', 'E G# B E G# B E G# B E', 'F# B D# F# A C# D# F# A C#'],
      ['F', 'F A C F A C F A C F', 'G C E G Bb D E G Bb D'],
      ['G', 'G B D G B D G B D G', 'A D F# A C E F# A C E'],
    ])(
      'reedsOf spells the harp in %s as Wikibooks, "Harmonica / Layouts", prints it',
      (key, blow, draw) => {
        expect(namesOf(makeHarp(parseKey(key)), 'blow')).toBe(blow);
        expect(namesOf(makeHarp(parseKey(key)), 'draw')).toBe(draw);
      },
    );
  });

  published('wikipedia-richter', 'the standard layout', () => {
    it('makeHarp puts G to B below middle C, Db to F# above it: Wikipedia, "Richter-tuned harmonica"', () => {
      const low = ['G', 'Ab', 'A', 'Bb', 'B'].map(
        (key) => rowOf(makeHarp(parseKey(key)), 'blow')[0] ?? 0,
      );
      const high = ['Db', 'D', 'Eb', 'E', 'F', 'F#'].map(
        (key) => rowOf(makeHarp(parseKey(key)), 'blow')[0] ?? 0,
      );
      expect(low.every((pitch) => pitch < 60)).toBe(true);
      expect(high.every((pitch) => pitch > 60)).toBe(true);
    });
  });

  published('practice', 'the trade', () => {
    it('makeHarp begins low keys an octave down, low-low F two octaves (common practice, no source)', () => {
      const lowest = (key: string, register: 'low-low' | 'low' | 'high') =>
        rowOf(makeHarp(parseKey(key), { register }), 'blow')[0];
      expect(lowest('F', 'low')).toBe(midi('F3'));
      expect(lowest('F', 'low-low')).toBe(midi('F2'));
      expect(lowest('G', 'high')).toBe(midi('G4'));
    });
  });
});

describe('bends and overbends of the standard layout', () => {
  const bentAt = (hole: number, breath: Breath): readonly number[] =>
    soundingsAt(C_HARP, hole, breath)
      .filter(({ technique }) => technique === 'bend')
      .map(({ pitch }) => pitch);

  published('bending-question', 'holes that bend', () => {
    it('soundings bends the holes that Physics Stack Exchange, question 450238, lists', () => {
      const bent = soundings(C_HARP, { level: 'bends' }).filter(({ depth }) => depth > 0);
      const places = [...new Set(bent.map(({ hole, breath }) => `${breath} ${hole}`))];
      expect(places.join(', ')).toBe(
        'draw 1, draw 2, draw 3, draw 4, draw 6, blow 8, blow 9, blow 10',
      );
    });
  });

  published('bending-post', 'how far holes bend', () => {
    it('soundingsAt bends holes 1 to 3 as the list post "Bending & overblows", September 1994, works out', () => {
      expect(bentAt(1, 'draw')).toEqual(notes('Db4'));
      expect(bentAt(2, 'draw')).toEqual(notes('F#4 F4'));
      expect(bentAt(3, 'draw')).toEqual(notes('Bb4 A4 Ab4'));
    });
  });

  published('three-draw-post', 'the bends of 3 draw', () => {
    it('soundingsAt bends 3 draw to Bb, A and Ab, as the list post "3 Hole Draw", January 1995, has it', () => {
      expect(bentAt(3, 'draw')).toEqual(notes('Bb4 A4 Ab4'));
      // "The opening reed will vibrate at a pitch 1/2 tone above its sound as a closing reed."
      expect(bentAt(3, 'draw').at(-1)).toBe((C_HARP.holes[2]?.blow ?? 0) + 1);
    });
  });

  published('folkipedia', 'bends', () => {
    it('soundings bends 1 to 4, 6 and 8 to 10, and 3 draw to Ab, as Folkipedia, "Bending Notes", says', () => {
      const bent = soundings(C_HARP).filter(({ technique }) => technique === 'bend');
      expect([...new Set(bent.map(({ hole }) => hole))]).toEqual([1, 2, 3, 4, 6, 8, 9, 10]);
      expect(bentAt(3, 'draw').at(-1)).toBe(midi('Ab4'));
      expect(bentAt(4, 'draw')).toEqual(notes('C#5'));
    });
  });

  published('bending-post', 'how far holes bend', () => {
    it('soundingsAt bends the other holes by the rule of that post: down to a semitone above the lower reed', () => {
      expect(bentAt(4, 'draw')).toEqual(notes('Db5'));
      expect(bentAt(6, 'draw')).toEqual(notes('Ab5'));
      expect(bentAt(8, 'blow')).toEqual(notes('Eb6'));
      expect(bentAt(9, 'blow')).toEqual(notes('F#6'));
      expect(bentAt(10, 'blow')).toEqual(notes('B6 Bb6'));
    });
  });

  published('practice', 'the trade', () => {
    it('soundings overbends a semitone above the higher reed, in every hole (common practice, no source)', () => {
      const overbent = soundings(C_HARP, { level: 'overbends' }).filter(({ technique }) =>
        technique.startsWith('over'),
      );
      const expected = notes('Eb4 Ab4 C5 Eb5 F#5 Bb5 Db6 F6 Ab6 Db7');
      expect(overbent.map(({ pitch }) => pitch)).toEqual(expected);
      const breaths = overbent.map(({ technique }) => technique);
      expect(breaths).toEqual([...Array(6).fill('overblow'), ...Array(4).fill('overdraw')]);
    });

    it('nameOnHarp spells bends and overbends with one sharp and flats (common practice, no source)', () => {
      const names = soundings(C_HARP, { level: 'overbends' })
        .filter(({ technique }) => technique !== 'natural')
        .map(({ pitch }) => nameOnHarp(C_HARP, pitch).replace(/\d/u, ''));
      const chromatic = names.filter((name) => name.length > 1);
      expect(new Set(chromatic)).toEqual(new Set(['Db', 'Eb', 'F#', 'Ab', 'Bb']));
    });
  });

  published('bahnson', 'bends and overbends', () => {
    it('soundings puts every bend between the reeds and every overbend outside them: Bahnson, Antaki and Beery, J. Acoust. Soc. Am. 103(4), 1998, abstract', () => {
      for (const { hole, technique, pitch } of soundings(C_HARP, { level: 'overbends' })) {
        const { blow = 0, draw = 0 } = C_HARP.holes[hole - 1] ?? {};
        const isBetween = pitch > Math.min(blow, draw) && pitch < Math.max(blow, draw);
        if (technique !== 'natural') expect(isBetween).toBe(technique === 'bend');
      }
    });
  });

  published('practice', 'the trade', () => {
    it('missingPitches is empty with overbends: the harp is fully chromatic (common practice, no source)', () => {
      expect(missingPitches(C_HARP, { level: 'overbends' })).toEqual([]);
      expect(missingPitches(C_HARP, { level: 'bends' })).toEqual(notes('Eb4 Eb5 F#5 Bb5 Db6 Ab6'));
    });
  });

  published('wikipedia-richter', 'half-valved harps', () => {
    it('soundings of a half-valved harp bends all reeds and does not overbend: Wikipedia, "Richter-tuned harmonica", Valved diatonics', () => {
      const half = soundings(C_HARP, { valved: true });
      const valved = half.filter(({ technique }) => technique === 'valved-bend');
      expect([...new Set(valved.map(({ hole, breath }) => `${breath} ${hole}`))]).toEqual([
        ...[1, 2, 3, 4, 5, 6].map((hole) => `blow ${hole}`),
        ...[7, 8, 9, 10].map((hole) => `draw ${hole}`),
      ]);
      expect(half.some(({ technique }) => technique.startsWith('over'))).toBe(false);
    });
  });
});

describe('alternate tunings', () => {
  const STANDARD_BLOW = 'C E G C E G C E G C';
  const MINOR_BLOW = 'C Eb G C Eb G C Eb G C';
  const SPECIAL = 'Wikipedia, "Richter-tuned harmonica", Specially-tuned instruments';

  published('wikipedia-richter', 'tunings made for a purpose', () => {
    it.each([
      ['raised-fifth-draw', 'C', STANDARD_BLOW, 'D G B D F# A B D F A', SPECIAL],
      ['natural-minor', 'Gm', MINOR_BLOW, 'D G Bb D F A Bb D F A', SPECIAL],
      ['harmonic-minor', 'Cm', MINOR_BLOW, 'D G B D F Ab B D F Ab', SPECIAL],
      [
        'raised-third-blow-and-fifth-and-ninth-draw',
        'G',
        'C E A C E G C E G C',
        'D G B D F# A B D F# A',
        SPECIAL,
      ],
      [
        'raised-fifth-and-ninth-draw',
        'C',
        STANDARD_BLOW,
        'D G B D F# A B D F# A',
        'Wikipedia, "Richter tuning", Variants: each F raised by a semitone',
      ],
    ])('makeHarp in %s labelled %s gives blow %s, draw %s: %s', (tuning, key, blow, draw) => {
      const harp = makeHarp(parseKey(key), { tuning });
      expect(namesOf(harp, 'blow')).toBe(blow);
      expect(namesOf(harp, 'draw')).toBe(draw);
    });
  });

  const TITLE = 'makeHarp in %s labelled C gives blow %s, draw %s';

  published('meade', 'the third blow reed raised for Irish tunes', () => {
    it.each([['raised-third-blow', 'C E A C E G C E G C', 'D G B D F A B D F A']])(
      TITLE,
      (tuning, blow, draw) => {
        expect(namesOf(makeHarp('C', { tuning }), 'blow')).toBe(blow);
        expect(namesOf(makeHarp('C', { tuning }), 'draw')).toBe(draw);
      },
    );
  });

  published('wikipedia-solo', 'the rows of the solo layout', () => {
    it.each([['solo-twelve', 'C E G C C E G C C E G C', 'D F A B D F A B D F A B']])(
      TITLE,
      (tuning, blow, draw) => {
        expect(namesOf(makeHarp('C', { tuning }), 'blow')).toBe(blow);
        expect(namesOf(makeHarp('C', { tuning }), 'draw')).toBe(draw);
      },
    );
  });

  published('missin-article', 'dorian', () => {
    it('dorian is the standard blow row over the draw row of natural minor: Missin, article AHN3, 2005', () => {
      const dorian = makeHarp('Gm', { tuning: 'dorian' });
      expect(rowOf(dorian, 'blow')).toEqual(rowOf(C_HARP, 'blow'));
      expect(rowOf(dorian, 'draw')).toEqual(
        rowOf(makeHarp('Gm', { tuning: 'natural-minor' }), 'draw'),
      );
    });
  });

  published('wikipedia-solo', 'solo', () => {
    it('solo-twelve has all major-scale notes in all three octaves: Wikipedia, "Solo tuning"', () => {
      const natural = soundings(makeHarp('C', { tuning: 'solo-twelve' }), { level: 'natural' });
      const pitches = [...new Set(natural.map(({ pitch }) => pitch))].sort((a, b) => a - b);
      const scale = 'C D E F G A B'.split(' ').map((name) => parseNoteName(name).pitchClass);
      const threeOctaves = [4, 5, 6].flatMap((octave) =>
        scale.map((above) => above + 12 * (octave + 1)),
      );
      expect(pitches).toEqual([...threeOctaves, midi('C7')]);
    });
  });
});

describe('temperaments', () => {
  const centsOf = (temperament: string, breath: Breath): number[] =>
    temperHarp(C_HARP, temperament)
      .reeds.filter((reed) => reed.breath === breath)
      .map(({ cents }) => Math.round(cents));

  const BLOW = [0, -14, 2, 0, -14, 2, 0, -14, 2, 0];

  published('hansson-scales', 'temperaments', () => {
    it.each([
      [
        'five-limit',
        [4, 2, -12, 4, -2, -16, -12, 4, -2, -16],
        'ji_hca01.scl, 17 July 2004, and table 8B',
      ],
      [
        'seven-limit',
        [4, 2, -12, 4, -29, 6, -12, 4, -29, 6],
        'ji_hca02.scl, 17 July 2004: 21/16 is 29 cents flat',
      ],
      [
        'five-limit-minor-chord',
        [4, 2, -12, 4, 20, 6, -12, 4, 20, 6],
        'ji_hca03.scl, 17 July 2004: 27/20 is 20 cents sharp',
      ],
      ['pythagorean-seventh', [4, 2, -12, 4, -2, 6, -12, 4, -2, 6], 'ji_hca23.scl, 17 July 2004'],
      ['nineteen-limit', [4, 2, -12, 4, 1, 6, -12, 4, 1, 6], '"Tuning", table 8B'],
    ])('temperHarp in %s gives the draw row %j of Hansson, %s', (temperament, draw) => {
      expect(centsOf(temperament, 'draw')).toEqual(draw);
      expect(centsOf(temperament, 'blow')).toEqual(BLOW);
    });
  });

  published('missin-list', 'thirds of I and V', () => {
    it('temperHarp in compromise puts the thirds of I and V midway between just and equal: Missin, tuning-list post, 16 July 1996', () => {
      const just = temperHarp(C_HARP, 'five-limit').reeds;
      for (const [index, { cents, pitch }] of temperHarp(C_HARP, 'compromise').reeds.entries()) {
        const isThird = pitch % 12 === 4 || pitch % 12 === 11;
        if (isThird) expect(cents).toBeCloseTo((just[index]?.cents ?? 0) / 2, 9);
      }
    });
  });

  published('missin-audio', 'the traditional draw chord', () => {
    it('chordIntonation finds draw 2 to 5 beatless at 4:5:6:7 in seven-limit: Missin, audio page, 2004', () => {
      const harp = temperHarp(C_HARP, 'seven-limit');
      const { intervals } = chordIntonation(harp, [2, 3, 4, 5], 'draw', {
        proportions: [4, 5, 6, 7],
      });
      for (const { beats, deviation } of intervals) {
        expect(beats).toBeCloseTo(0, 9);
        expect(deviation).toBeCloseTo(0, 9);
      }
      const fromRoot = intervals
        .filter(({ lower }) => lower === 0)
        .map(({ cents }) => cents.toFixed(1));
      expect(fromRoot).toEqual(['386.3', '702.0', '968.8']);
    });
  });

  published('hansson-tuning', 'draw 4 to 6 in 19-limit', () => {
    it('chordIntonation finds draw 4 to 6 at 16:19:24 in nineteen-limit: Hansson, "Tuning", table 8B (ratio computed)', () => {
      const harp = temperHarp(C_HARP, 'nineteen-limit');
      const { intervals } = chordIntonation(harp, [4, 5, 6], 'draw', { proportions: [16, 19, 24] });
      expect(Math.max(...intervals.map(({ beats }) => beats))).toBeCloseTo(0, 9);
    });
  });

  published('hansson-scales', 'draw 4 to 6 in the minor-chord form', () => {
    it('chordIntonation finds draw 4 to 6 beatless at 10:12:15 in five-limit-minor-chord: Hansson, ji_hca03.scl', () => {
      const harp = temperHarp(C_HARP, 'five-limit-minor-chord');
      const { intervals } = chordIntonation(harp, [4, 5, 6], 'draw', { proportions: [10, 12, 15] });
      expect(Math.max(...intervals.map(({ beats }) => beats))).toBeCloseTo(0, 9);
    });
  });

  published('computed', 'worked out', () => {
    it('temperHarp makes draw 4 and 6 sound their root an octave down as difference tone in nineteen-limit (computed: 24 - 16 = 8)', () => {
      const { reeds } = temperHarp(C_HARP, 'nineteen-limit');
      const hz = (hole: number) =>
        reeds.find((reed) => reed.hole === hole && reed.breath === 'draw')?.frequency ?? 0;
      expect((hz(6) - hz(4)) / hz(4)).toBeCloseTo(8 / 16, 9);
    });
  });

  published('scala-format', 'what is read', () => {
    it('readScala reads comments, ratios, whole numbers and cents as the Scala scale file format says', () => {
      const text =
        '! example.scl\n!\nExample of the format\n 4\n!\n 100.0\n 5/4\n 3/2 remark\n 2\n';
      const { cents, octaveStretch, name } = readScala(text);
      expect(name).toBe('Example of the format');
      expect(cents[1]).toBe(0);
      expect(cents[4]).toBeCloseTo(-13.686, 3);
      expect(cents[7]).toBeCloseTo(1.955, 3);
      expect(octaveStretch).toBe(0);
    });
  });

  published('computed', 'worked out', () => {
    it('ratioCents of the harmonic seventh is 968.8, and nearestRatio names it (computed)', () => {
      expect(ratioCents({ numerator: 7, denominator: 4 }).toFixed(1)).toBe('968.8');
      expect(nearestRatio(968.8)).toEqual({ numerator: 7, denominator: 4 });
    });
  });
});

describe('frequencies', () => {
  published('iso-16', 'standard tuning frequency', () => {
    it('reedsOf gives A4 of a harp in A as 440 Hz: ISO 16 (value from memory)', () => {
      const reeds = BREATHS.flatMap((breath) =>
        reedsOf(makeHarp('A')).filter((reed) => reed.breath === breath),
      );
      expect(reeds.find(({ name }) => name === 'A4')?.frequency).toBe(440);
    });
  });
});

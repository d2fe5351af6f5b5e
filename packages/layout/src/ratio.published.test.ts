import { expect, it } from 'vitest';
import { published } from '../../../test/sources/published.js';
import {
  makeHarp,
  nearestRatio,
  ratioCents,
  readScala,
  soundingsAt,
  temperamentById,
  temperHarp,
} from './index.js';

const cents = (text: string): number => {
  const [numerator = 1, denominator = 1] = text.split('/').map(Number);
  return ratioCents({ numerator, denominator });
};

published('abraham', 'intervals made of others', () => {
  it.each([
    ['the just semitone', '16/15', '256/243 81/80'],
    ['the thin tone', '10/9 81/80', '9/8'],
    ['the true major third', '5/4', '9/8 10/9'],
    ['the Pythagorean third', '81/64', '9/8 9/8'],
    ['the fourth', '4/3', '9/8 9/8 256/243'],
    ['the fourth by a just semitone', '4/3', '9/8 10/9 16/15'],
    ['the fifth', '3/2', '9/8 9/8 256/243 9/8'],
  ])('ratioCents makes %s of its parts: %s = %s', (_, whole, parts) => {
    const sum = (text: string) => text.split(' ').reduce((total, part) => total + cents(part), 0);
    expect(sum(whole)).toBeCloseTo(sum(parts), 9);
  });
});

published('schulenberg', 'ratios of the harmonic series as decimals', () => {
  it.each([
    [0.5, '2/1'],
    [0.667, '3/2'],
    [0.75, '4/3'],
    [0.8, '5/4'],
    [0.833, '6/5'],
    [0.857, '7/6'],
    [0.875, '8/7'],
    [0.888, '9/8'],
    [0.9, '10/9'],
  ])('nearestRatio finds the length %d to be that of %s', (length, printed) => {
    const { numerator, denominator } = nearestRatio(1200 * Math.log2(1 / length));
    expect(`${numerator}/${denominator}`).toBe(printed);
  });
});

const MEANTONE = `! meanquar.scl
!
1/4-comma meantone scale. Pietro Aaron's temperament (1523)
 12
!
 76.04900
 193.15686
 310.26471
 5/4
 503.42157
 579.47057
 696.57843
 25/16
 889.73529
 1006.84314
 1082.89214
 2/1
`;

published('scala-format', 'the example of the page', () => {
  it.each(
    [76.049, 193.15686, 310.26471, 386.31371, 503.42157, 579.47057, 696.57843, 772.62743]
      .concat([889.73529, 1006.84314, 1082.89214])
      .map((value, at): readonly [number, number] => [at + 1, value]),
  )('readScala puts semitone %i at %d cents', (semitone, value) => {
    const read = readScala(MEANTONE).cents[semitone];
    expect(100 * semitone + Number(read)).toBeCloseTo(value, 4);
  });

  it('readScala takes the description, and 2/1 for an octave that is not stretched', () => {
    const { name, octaveStretch } = readScala(MEANTONE);
    expect(name).toBe("1/4-comma meantone scale. Pietro Aaron's temperament (1523)");
    expect(octaveStretch).toBe(0);
  });
});

/** The pitches of a file of Hansson's, with the remarks that stand behind them. */
const FILES = [
  [
    'ji_hca02.scl',
    'seven-limit',
    '9/8 Major whole tone|5/4 Major third|21/16 Perfect fourth decreased with 27 cent|3/2 Perfect fifth|27/16 Major sixth increased with 22 cent|15/8 Major seventh|2/1 Octave',
  ],
  [
    'ji_hca23.scl',
    'pythagorean-seventh',
    '9/8 Major whole tone|5/4 Major third|4/3 Perfect fourth unchanged|3/2 Perfect fifth|27/16 Major sixth increased with 22 cent|15/8 Major seventh|2/1 Octave',
  ],
] as const;

const DEGREES = [
  ['whole tone', 2],
  ['third', 4],
  ['fourth', 5],
  ['fifth', 7],
  ['sixth', 9],
  ['seventh', 11],
] as const;

published('hansson-scales', 'his files read as they stand, against the temperaments', () => {
  it.each(
    FILES.flatMap(([file, id, lines]) =>
      DEGREES.map(([degree, semitones]) => [file, degree, id, semitones, lines] as const),
    ),
  )('readScala of %s gives the %s of %s', (_, __, id, semitones, lines) => {
    const text = `! by Hansson, 2004-07-17\nJI for hca\n7\n${lines.split('|').join('\n')}\n`;
    expect(readScala(text).cents[semitones]).toBeCloseTo(
      Number(temperamentById(id).cents[semitones]),
      9,
    );
  });
});

published('hansson-scales', 'what he says in cents of the changes', () => {
  const of = (temperament: string, hole: number): number =>
    temperHarp(makeHarp('C'), temperament).reeds.find(
      (reed) => reed.hole === hole && reed.breath === 'draw',
    )?.cents ?? Number.NaN;

  it.each([
    ['the sixth degree is raised by 22 cents', 6, 'five-limit', 'seven-limit', 22],
    [
      'the fourth is lowered by 27 cents for the second position',
      5,
      'five-limit',
      'seven-limit',
      -27,
    ],
    [
      'the fourth is raised by 22 cents for the third',
      5,
      'five-limit',
      'five-limit-minor-chord',
      22,
    ],
    ['the fourth stays for both', 5, 'five-limit', 'pythagorean-seventh', 0],
  ])('temperHarp: %s', (_, hole, from, to, printed) => {
    expect(Math.round(of(to, hole) - of(from, hole)) + 0).toBe(printed);
  });
});

published('cutting', 'mean pitches of blue notes, to be bent to on a C harp in G', () => {
  it.each([
    ['flat third', 319.1, 3],
    ['flat fifth', 582.8, 4],
    ['flat seventh', 1037.9, 2],
  ])('soundingsAt bends towards the %s, %d cents above the tonic, in hole %i', (_, above, hole) => {
    const harp = makeHarp('C');
    const { blow = 0, draw = 0 } = harp.holes[hole - 1] ?? {};
    // G is 67; the seventh is taken an octave lower, where it is bent.
    const wanted = 67 + above / 100 - (above > 1000 ? 12 : 0);
    expect(wanted).toBeGreaterThan(blow);
    expect(wanted).toBeLessThan(draw);
    const bends = soundingsAt(harp, hole, 'draw').filter(({ technique }) => technique === 'bend');
    const nearest = Math.min(...bends.map(({ pitch }) => Math.abs(pitch - wanted)));
    expect(nearest).toBeLessThan(0.5);
  });
});

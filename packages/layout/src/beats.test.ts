import { describe, expect, it } from 'vitest';
import {
  chordIntonation,
  intervalIntonation,
  makeHarp,
  nearestRatio,
  ratioCents,
  temperHarp,
} from './index.js';

const written = (cents: number, limit?: number): string => {
  const { numerator, denominator } = nearestRatio(cents, limit === undefined ? {} : { limit });
  return `${numerator}/${denominator}`;
};

describe('nearestRatio', () => {
  it.each([
    [0, '1/1'],
    [100, '16/15'],
    [200, '9/8'],
    [300, '6/5'],
    [400, '5/4'],
    [500, '4/3'],
    [600, '7/5'],
    [700, '3/2'],
    [800, '8/5'],
    [900, '5/3'],
    [1000, '7/4'],
    [1100, '15/8'],
    [1200, '2/1'],
    [1600, '5/2'],
    [1900, '3/1'],
    [2400, '4/1'],
    [3600, '8/1'],
  ])('hears %i cents as %s', (cents, ratio) => {
    expect(written(cents)).toBe(ratio);
  });

  it('stays within the prime limit', () => {
    expect(written(600, 5)).toBe('25/18');
    expect(written(700, 2)).toBe('2/1');
    expect(written(1000, 5)).toBe('9/5');
    expect(written(1000, 3)).toBe('16/9');
    expect(written(1049, 11)).toBe('11/6');
    expect(written(1049, 7)).toBe('9/5');
  });

  it('nearestRatio with a limit that is named takes a just ratio of that prime for what it is', () => {
    expect(written(297.5)).toBe('6/5');
    expect(written(297.5, 19)).toBe('19/16');
    expect(written(404.4, 19)).toBe('24/19');
    expect(written(300, 19)).toBe('6/5');
    expect(written(435.1)).toBe('5/4');
    expect(written(435.1, 7)).toBe('9/7');
    // The prime is the limit's own: a just 32/27 stays a narrow 6/5.
    expect(written(294.1, 19)).toBe('6/5');
    expect(written(294.1, 3)).toBe('32/27');
  });

  it.each([
    [-1, 7],
    [6001, 7],
    [Number.NaN, 7],
    [700, 1],
    [700, 37],
  ])('throws NUMBER_RANGE for %d cents within limit %d', (cents, limit) => {
    expect(() => nearestRatio(cents, { limit })).toThrow(
      expect.objectContaining({ code: 'NUMBER_RANGE' }),
    );
  });
});

describe('intervalIntonation', () => {
  it('chordIntonation measures the minor chord of a 19-limit harp against 19 where that is named', () => {
    const harp = temperHarp(makeHarp('C'), 'nineteen-limit');
    const named = chordIntonation(harp, [4, 5, 6], 'draw', { limit: 19 }).intervals;
    expect(named.map(({ ratio }) => `${ratio.numerator}/${ratio.denominator}`)).toEqual([
      '19/16',
      '3/2',
      '24/19',
    ]);
    for (const { deviation } of named) expect(deviation).toBeCloseTo(0, 6);
    const [third] = chordIntonation(harp, [4, 5], 'draw').intervals;
    expect(third?.ratio).toEqual({ numerator: 6, denominator: 5 });
    expect(third?.deviation).toBeCloseTo(-18.1, 1);
  });

  it('beats at the difference of the partials that should coincide', () => {
    const major = intervalIntonation(400, 502, { ratio: { numerator: 5, denominator: 4 } });
    expect(major.beats).toBe(8);
    expect(major.deviation).toBeGreaterThan(0);
    expect(intervalIntonation(400, 498, { ratio: { numerator: 5, denominator: 4 } }).beats).toBe(8);
  });

  it.each([
    [440, 439],
    [0, 440],
    [-440, 440],
    [Number.NaN, 440],
    [440, 100_000.5],
  ])('throws NUMBER_RANGE for an interval from %d up to %d Hz', (lower, upper) => {
    expect(() => intervalIntonation(lower, upper)).toThrow(
      expect.objectContaining({ code: 'NUMBER_RANGE' }),
    );
  });

  it('takes a unison, and the highest frequency', () => {
    expect(intervalIntonation(100_000, 100_000)).toMatchObject({ cents: 0, beats: 0 });
  });

  it('does not beat in a just interval', () => {
    const { beats, deviation } = intervalIntonation(264, 396);
    expect(beats).toBe(0);
    expect(deviation).toBeCloseTo(0, 9);
  });

  it.each([
    [0, 440],
    [440, 439],
    [Number.NaN, 440],
    [440, Number.POSITIVE_INFINITY],
  ])('throws NUMBER_RANGE for %d and %d Hz', (lower, upper) => {
    expect(() => intervalIntonation(lower, upper)).toThrow(
      expect.objectContaining({ code: 'NUMBER_RANGE' }),
    );
  });
});

describe('chordIntonation', () => {
  const equal = temperHarp(makeHarp('C'), 'equal');

  it('measures every pair of notes, from the lowest up', () => {
    const { reeds, intervals } = chordIntonation(equal, [4, 2, 3], 'draw');
    expect(reeds.map(({ hole }) => hole)).toEqual([2, 3, 4]);
    expect(intervals.map(({ lower, upper }) => [lower, upper])).toEqual([
      [0, 1],
      [0, 2],
      [1, 2],
    ]);
    expect(
      intervals.map(({ ratio: { numerator, denominator } }) => [numerator, denominator]),
    ).toEqual([
      [5, 4],
      [3, 2],
      [6, 5],
    ]);
  });

  it('measures an octave split against 2:1', () => {
    const [octave] = chordIntonation(equal, [1, 4], 'blow').intervals;
    expect(octave).toMatchObject({ ratio: { numerator: 2, denominator: 1 }, beats: 0 });
  });

  it('takes a hole named twice once', () => {
    expect(chordIntonation(equal, [1, 4, 1], 'blow').reeds).toHaveLength(2);
  });

  it('takes proportions that begin with one', () => {
    const split = chordIntonation(equal, [1, 4], 'blow', { proportions: [1, 2] });
    expect(split).toEqual(chordIntonation(equal, [1, 4], 'blow'));
  });

  it('throws HOLE_RANGE for a hole there is not, or a single one', () => {
    for (const holes of [[1, 11], [1], [1, 1], []]) {
      expect(() => chordIntonation(equal, holes, 'blow')).toThrow(
        expect.objectContaining({ code: 'HOLE_RANGE' }),
      );
    }
  });

  it('throws OPTION_UNKNOWN for a breath there is not', () => {
    expect(() => chordIntonation(equal, [1, 2], 'suck' as 'draw')).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN' }),
    );
  });

  it.each([[[4, 5]], [[4, 5, 5]], [[4, 5.5, 6]], [[0, 1, 2]], [[6, 5, 4]]])(
    'throws NUMBER_RANGE for proportions %j of three notes',
    (proportions) => {
      expect(() => chordIntonation(equal, [1, 2, 3], 'blow', { proportions })).toThrow(
        expect.objectContaining({ code: 'NUMBER_RANGE', value: proportions }),
      );
    },
  );
});

describe('ratioCents', () => {
  it('gives cents of a ratio below one as negative', () => {
    expect(ratioCents({ numerator: 1, denominator: 2 })).toBe(-1200);
  });
});

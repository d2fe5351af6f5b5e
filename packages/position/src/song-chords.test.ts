import { makeChart, parseForm } from '@reedplate/form';
import { parseKey, TWELVE_KEYS } from '@reedplate/pitch';
import { describe, expect, it } from 'vitest';
import { type SongChord, songChords } from './song-chords.js';

const G = parseKey('G');
const told = (chords: readonly SongChord[]): string[] =>
  chords.map(({ chord, share }) => `${chord.symbol} ${share.toFixed(3)}`);

describe('songChords', () => {
  it('takes a song without chords to be the basic twelve bars, by the mode of its key', () => {
    expect(told(songChords(G, undefined))).toEqual(['G7 0.583', 'C7 0.250', 'D7 0.167']);
    expect(told(songChords(parseKey('Am'), undefined))).toEqual([
      'Am7 0.583',
      'Dm7 0.250',
      'E7 0.167',
    ]);
  });

  it('takes a song without chords for what its chart of the form basic says', () => {
    for (const key of TWELVE_KEYS) {
      expect(songChords(key, undefined)).toEqual(songChords(key, makeChart('basic', key)));
    }
  });

  it('shares the time of a chart among its chords, the longest first', () => {
    const chart = makeChart('quick-change', 'G');
    const chords = songChords(G, chart);
    expect(chords[0]?.chord.symbol).toBe('G7');
    expect(chords.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    const longest = chords.map(({ share }) => share);
    expect(longest).toEqual([...longest].sort((a, b) => b - a));
  });

  it('puts the longest chord first wherever it stands', () => {
    expect(told(songChords(G, ['IV7', 'I7', 'V7', 'I7', 'V7', 'I7']))).toEqual([
      'G7 0.500',
      'D7 0.333',
      'C7 0.167',
    ]);
  });

  it('counts parts of a bar, and choruses alike', () => {
    const form = parseForm('I7 IV7 | I7');
    const shares = ['G7 0.750', 'C7 0.250'];
    expect(told(songChords(G, makeChart(form, 'G')))).toEqual(shares);
    expect(told(songChords(G, makeChart(form, 'G', { choruses: 3 })))).toEqual(shares);
  });

  it('leaves breaks out of the time', () => {
    const chart = makeChart(parseForm('I7 | N.C. | V7'), 'G');
    expect(told(songChords(G, chart))).toEqual(['G7 0.500', 'D7 0.500']);
  });

  it('reads numerals in equal shares and adds up those that come again', () => {
    expect(told(songChords(G, ['I7', 'ii7', 'V7', 'I7']))).toEqual([
      'G7 0.500',
      'Am7 0.250',
      'D7 0.250',
    ]);
  });

  it('throws CHART_INVALID for a chart of breaks alone', () => {
    const chart = makeChart(parseForm('N.C. | N.C.'), 'G');
    expect(() => songChords(G, chart)).toThrow(expect.objectContaining({ code: 'CHART_INVALID' }));
  });
});

import { all as tonalChordTypes } from '@tonaljs/chord-type';
import { describe, expect, test } from 'vitest';
import {
  type ChordQuality,
  canonicalSuffixes,
  chordSuffixes,
  hasMinorThird,
  readChordQuality,
} from './chord-quality.js';

const read = (suffix: string): string | undefined => readChordQuality(suffix)?.suffix;

describe('readChordQuality', () => {
  test.each([
    ['', ''],
    ['M', ''],
    ['maj', ''],
    ['major', ''],
    ['m', 'm'],
    ['min', 'm'],
    ['mi', 'm'],
    ['-', 'm'],
    ['minor', 'm'],
    ['7', '7'],
    ['dom7', '7'],
    ['dominant7', '7'],
    ['maj7', 'maj7'],
    ['Maj7', 'maj7'],
    ['ma7', 'maj7'],
    ['M7', 'maj7'],
    ['7M', 'maj7'],
    ['Δ', 'maj7'],
    ['△', 'maj7'],
    ['△7', 'maj7'],
    ['m7', 'm7'],
    ['min7', 'm7'],
    ['mi7', 'm7'],
    ['-7', 'm7'],
    ['−7', 'm7'],
    ['m(maj7)', 'mMaj7'],
    ['min(maj7)', 'mMaj7'],
    ['mM7', 'mMaj7'],
    ['ø', 'm7b5'],
    ['ø7', 'm7b5'],
    ['min7b5', 'm7b5'],
    ['m7♭5', 'm7b5'],
    ['°', 'dim'],
    ['o7', 'dim7'],
    ['+', 'aug'],
    ['6/9', '69'],
    ['m6/9', 'm69'],
    ['maj6', '6'],
    ['7(♯9)', '7#9'],
    ['(add9)', 'add9'],
    ['sus', 'sus4'],
    ['7alt', '7#5#9'],
  ])('reads %j as %j', (suffix, canonical) => {
    expect(read(suffix)).toBe(canonical);
  });

  test.each([['x'], ['mm'], ['valueOf'], ['__proto__'], ['4'], ['7 '], ['M'.repeat(100_000)]])(
    'knows no quality of %j',
    (suffix) => {
      expect(readChordQuality(suffix)).toBeUndefined();
    },
  );

  test('gives the tones above the root', () => {
    expect(readChordQuality('dim7')?.tones).toEqual([
      { degree: '1', interval: '1P', semitones: 0 },
      { degree: 'b3', interval: '3m', semitones: 3 },
      { degree: 'b5', interval: '5d', semitones: 6 },
      { degree: 'bb7', interval: '7d', semitones: 9 },
    ]);
  });

  test('names the tenth of the chord of fourths as a third', () => {
    expect(readChordQuality('quartal')?.tones.at(-1)).toEqual({
      degree: 'b3',
      interval: '10m',
      semitones: 15,
    });
  });
});

describe('chordSuffixes', () => {
  test('are all read, and their canonical suffix reads as itself', () => {
    for (const suffix of chordSuffixes()) {
      const canonical = read(suffix);
      expect(canonical).toBeDefined();
      expect(read(canonical as string)).toBe(canonical);
    }
    expect(canonicalSuffixes().length).toBe(106);
  });
});

describe('hasMinorThird', () => {
  const minor = (suffix: string): boolean =>
    hasMinorThird(readChordQuality(suffix) as ChordQuality);

  test('holds for minor, diminished and half-diminished chords', () => {
    expect(['m', 'm7', 'm6', 'mMaj7', 'dim', 'dim7', 'm7b5'].every(minor)).toBe(true);
  });

  test('does not hold for major, suspended and power chords, nor beside a major third', () => {
    expect(['', '7', 'aug', 'sus4', '5', '7#9', 'quartal'].some(minor)).toBe(false);
  });
});

describe('chordSuffixes', () => {
  const suffixes = chordSuffixes();

  test('are those of tonal but for the two left out and the one added', () => {
    const tonal = tonalChordTypes().flatMap(({ aliases }) => aliases);
    expect(tonal.filter((suffix) => !suffixes.includes(suffix))).toEqual(['b9sus', '4'].sort());
    expect(suffixes.filter((suffix) => !tonal.includes(suffix))).toEqual(['ø7']);
  });

  test('name no suffix twice in tonal, so that none has two meanings', () => {
    const tonal = tonalChordTypes().flatMap(({ aliases }) => aliases);
    expect(tonal.filter((suffix, i) => tonal.indexOf(suffix) !== i)).toEqual([]);
  });

  test('hold no suffix that begins with a sign, which would belong to the root', () => {
    expect(suffixes.filter((suffix) => /^[#b♯♭]/u.test(suffix))).toEqual([]);
  });

  test('stand for chords of known degrees within 21 semitones, beginning with the root', () => {
    for (const suffix of suffixes) {
      const { tones = [] } = readChordQuality(suffix) ?? {};
      expect(tones.map(({ degree }) => degree).join(' ')).toMatch(
        /^1(?: (?:#|b|bb)?(?:[2-7]|9|1[13]))+$/,
      );
      expect(Math.max(...tones.map(({ semitones }) => semitones))).toBeLessThanOrEqual(21);
    }
  });
});

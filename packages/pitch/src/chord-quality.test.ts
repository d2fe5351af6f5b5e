import { describe, expect, test } from 'vitest';
import {
  CANONICAL_SUFFIXES,
  type ChordQuality,
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
      { degree: '1', semitones: 0, steps: 0 },
      { degree: 'b3', semitones: 3, steps: 2 },
      { degree: 'b5', semitones: 6, steps: 4 },
      { degree: 'bb7', semitones: 9, steps: 6 },
    ]);
  });

  test('names the tenth of the chord of fourths as a third', () => {
    expect(readChordQuality('quartal')?.tones.at(-1)).toEqual({
      degree: 'b3',
      semitones: 15,
      steps: 9,
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
    expect(CANONICAL_SUFFIXES.size).toBe(106);
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

import { describe, expect, test } from 'vitest';
import { CHORD_TYPES } from './chord-types.js';
import { readDegree } from './degree.js';

describe('CHORD_TYPES', () => {
  const suffixes = CHORD_TYPES.flatMap(([, names]) => names.split(' '));

  test('name no suffix twice, so that none has two meanings', () => {
    expect(suffixes.filter((suffix, i) => suffixes.indexOf(suffix) !== i)).toEqual([]);
  });

  test('hold no suffix that begins with a sign, which would belong to the root', () => {
    expect(suffixes.filter((suffix) => /^[#b♯♭]/u.test(suffix))).toEqual([]);
  });

  test('hold no two kinds with the same degrees', () => {
    expect(new Set(CHORD_TYPES.map(([degrees]) => degrees)).size).toBe(CHORD_TYPES.length);
  });

  test('are all of known degrees, beginning with the root', () => {
    for (const [degrees] of CHORD_TYPES) {
      expect(degrees).toMatch(/^1(?: (?:#|b|bb)?(?:[2-7]|9|1[013]))+$/);
      const tones = degrees.split(' ').map((degree) => readDegree(degree).semitones);
      expect(Math.max(...tones)).toBeLessThanOrEqual(21);
    }
  });
});

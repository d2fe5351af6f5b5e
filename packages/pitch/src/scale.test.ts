import { describe, expect, test } from 'vitest';
import { parseScale, scaleNames } from './scale.js';

describe('parseScale', () => {
  test.each([
    ['blues', 'minor blues', [0, 3, 5, 6, 7, 10]],
    ['Minor Pentatonic', 'minor pentatonic', [0, 3, 5, 7, 10]],
    [' mixolydian ', 'mixolydian', [0, 2, 4, 5, 7, 9, 10]],
    ['natural minor', 'minor', [0, 2, 3, 5, 7, 8, 10]],
    ['ionian', 'major', [0, 2, 4, 5, 7, 9, 11]],
  ])('reads %j', (text, name, semitones) => {
    expect(parseScale(text)).toEqual({ name, semitones });
  });

  test.each<[unknown, string | undefined]>([
    ['blue', 'blues'],
    ['mixolidian', 'mixolydian'],
    ['', undefined],
    ['valueOf', undefined],
    ['__proto__', undefined],
    ['\uD800'.repeat(1000), undefined],
    [7, undefined],
    [null, undefined],
    [['blues'], undefined],
  ])('refuses %j and suggests %s', (text, nearest) => {
    expect(() => parseScale(text as string)).toThrow(
      expect.objectContaining({ code: 'SCALE_UNKNOWN', value: text, nearest }),
    );
  });

  test('gives the same frozen scale under every name', () => {
    expect(parseScale('blues')).toBe(parseScale('minor blues'));
    expect(Object.isFrozen(parseScale('blues'))).toBe(true);
    expect(Object.isFrozen(parseScale('blues').semitones)).toBe(true);
  });
});

describe('scaleNames', () => {
  test('are all read as themselves, each once, rising from the tonic within the octave', () => {
    expect(new Set(scaleNames()).size).toBe(92);
    for (const name of scaleNames()) {
      const { semitones, name: read } = parseScale(name);
      expect(read).toBe(name);
      expect(semitones[0]).toBe(0);
      expect(semitones).toEqual([...new Set(semitones)].sort((a, b) => a - b));
    }
  });
});

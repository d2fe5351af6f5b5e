import { describe, expect, test } from 'vitest';
import type { Key, KeyName } from './key.js';
import type { NoteName } from './note-name.js';
import { PITCH_CLASSES, type PitchClass } from './pitch-class.js';
import { plainName } from './plain-name.js';
import { spell, spellAbove } from './spell.js';

const inKey = (key: KeyName): string => PITCH_CLASSES.map((pc) => spell(pc, key)).join(' ');

describe('spell', () => {
  test.each<[KeyName, string]>([
    ['C', 'C Db D Eb E F Gb G Ab A Bb B'],
    ['G', 'C Db D Eb E F F# G Ab A Bb B'],
    ['E', 'C C# D D# E F F# G G# A Bb B'],
    ['Bb', 'C Db D Eb Fb F Gb G Ab A Bb Cb'],
    ['F#', 'C C# D D# E E# F# G G# A A# B'],
    ['Gb', 'C Db D Eb Fb F Gb G Ab A Bb Cb'],
    ['Am', 'C C# D Eb E F F# G G# A Bb B'],
  ])('spells in %s the degrees of the blues', (key, names) => {
    expect(inKey(key)).toBe(names);
  });

  test('spells in a minor key as in the major key on the same tonic', () => {
    expect(inKey('Gm')).toBe(inKey('G'));
  });

  test('spells in C major unless told', () => {
    expect(PITCH_CLASSES.map((pc) => spell(pc)).join(' ')).toBe(inKey('C'));
  });

  test('never writes a double sharp or flat', () => {
    for (const key of ['C#', 'D#', 'G#', 'A#', 'Cb', 'Abm'] as const) {
      expect(inKey(key)).not.toMatch(/##|bb/);
    }
  });

  test('refuses a key or a pitch class that is none', () => {
    const code = (name: string) => expect.objectContaining({ code: name });
    expect(() => spell(1, 'H' as KeyName)).toThrow(code('KEY_UNKNOWN'));
    expect(() => spell(1, {} as Key)).toThrow(code('KEY_UNKNOWN'));
    expect(() => spell(1, null as unknown as Key)).toThrow(code('KEY_UNKNOWN'));
    expect(() => spell(Number.NaN as PitchClass)).toThrow(code('NUMBER_RANGE'));
  });
});

describe('plainName', () => {
  test('names the notes as harps are labelled', () => {
    expect(PITCH_CLASSES.map(plainName).join(' ')).toBe('C Db D Eb E F F# G Ab A Bb B');
  });

  test('refuses what is no pitch class', () => {
    expect(() => plainName(0.5 as PitchClass)).toThrow(
      expect.objectContaining({ code: 'NUMBER_RANGE' }),
    );
  });
});

describe('spellAbove', () => {
  test('spells by the degree above the root', () => {
    expect([1, 3, 4, 6, 8, 10].map((up) => spellAbove(((2 + up) % 12) as PitchClass, 'D'))).toEqual(
      ['Eb', 'F', 'F#', 'Ab', 'Bb', 'C'],
    );
  });

  test('spells above a root that is no tonic of a key', () => {
    expect(spellAbove(9, 'E#')).toBe('A');
    expect(() => spellAbove(9, 'H' as NoteName)).toThrow(
      expect.objectContaining({ code: 'NOTE_UNKNOWN' }),
    );
  });
});

import { describe, expect, test } from 'vitest';
import { type Key, type KeyName, parseKey, TONICS, TWELVE_KEYS, toKey } from './key.js';
import { transposeKey } from './transpose-key.js';

const code = (name: string) => expect.objectContaining({ code: name });

describe('parseKey', () => {
  test.each([
    ['G', 'G'],
    ['g', 'G'],
    ['b', 'B'],
    ['bb', 'Bb'],
    ['bbm', 'Bbm'],
    ['B♭', 'Bb'],
    ['c♯ minor', 'C#m'],
    ['Gm', 'Gm'],
    ['GM', 'G'],
    ['Gmin', 'Gm'],
    ['Gmaj', 'G'],
    ['G  MAJOR', 'G'],
    ['  A minor ', 'Am'],
    ['abmin', 'Abm'],
  ])('reads %j as %s', (text, name) => {
    expect(parseKey(text).name).toBe(name);
  });

  test('takes twelve signs with what stands between, and no more', () => {
    expect(parseKey('C#     minor').name).toBe('C#m');
    expect(() => parseKey('C#      minor')).toThrow(code('KEY_UNKNOWN'));
  });

  test('gives tonic, mode and pitch class, frozen', () => {
    const key = parseKey('F#m');
    expect(key).toEqual({ name: 'F#m', tonic: 'F#', mode: 'minor', pitchClass: 6 });
    expect(Object.isFrozen(key)).toBe(true);
  });

  test.each<[unknown, string | undefined]>([
    ['H', 'B'],
    ['Hm', 'Bm'],
    ['Fb', 'E'],
    ['E#m', 'Fm'],
    ['Ebb', 'D'],
    ['Am7', 'Am'],
    ['Q', undefined],
    ['', undefined],
    ['valueOf', undefined],
    ['__proto__', undefined],
    ['\uDC00', undefined],
    ['G'.repeat(100_000), undefined],
    [`G${' '.repeat(100_000)}x`, undefined],
    [7, undefined],
    [null, undefined],
    [undefined, undefined],
    [['G'], undefined],
  ])('refuses %j and suggests %s', (text, nearest) => {
    expect(() => parseKey(text as string)).toThrow(
      expect.objectContaining({ code: 'KEY_UNKNOWN', value: text, nearest }),
    );
  });

  test('reads every tonic, major and minor', () => {
    for (const tonic of TONICS) {
      expect(parseKey(tonic)).toMatchObject({ name: tonic, mode: 'major' });
      expect(parseKey(`${tonic}m`)).toMatchObject({ name: `${tonic}m`, mode: 'minor' });
    }
  });
});

describe('TWELVE_KEYS', () => {
  test('hold one key of each pitch class, C first', () => {
    expect(TWELVE_KEYS.map((key) => key.pitchClass)).toEqual([
      0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11,
    ]);
    expect(TWELVE_KEYS.every((key) => parseKey(key.name) === key)).toBe(true);
  });
});

describe('toKey', () => {
  test('takes a key, its name, or a copy that has been through JSON', () => {
    const key = parseKey('Bb');
    expect(toKey('Bb')).toBe(key);
    expect(toKey(key)).toBe(key);
    expect(toKey(JSON.parse(JSON.stringify(key)) as Key)).toBe(key);
  });

  test.each([[null], [undefined], [{}], [{ name: 'H' }], ['H'], ['valueOf'], [1]])(
    'refuses %j',
    (key) => {
      expect(() => toKey(key as Key)).toThrow(code('KEY_UNKNOWN'));
    },
  );
});

describe('transposeKey', () => {
  test.each<[KeyName, number, KeyName]>([
    ['G', 5, 'C'],
    ['C', -1, 'B'],
    ['C', 6, 'F#'],
    ['C', 10, 'Bb'],
    ['F', -7, 'Bb'],
    ['C', 1201, 'Db'],
    ['Am', 4, 'C#m'],
    ['Am', 11, 'G#m'],
    ['Am', 9, 'F#m'],
    ['Am', 6, 'Ebm'],
    ['A#m', -12, 'A#m'],
    ['Gb', 0, 'Gb'],
  ])('moves %s by %i to %s', (from, semitones, to) => {
    expect(transposeKey(from, semitones).name).toBe(to);
  });

  test.each<[KeyName, number, KeyName]>([
    ['C#', 7, 'G#'],
    ['Gb', -7, 'Cb'],
    ['G#m', 5, 'C#m'],
    ['F#', -7, 'B'],
    ['C', 1, 'Db'],
    ['Cb', 5, 'E'],
  ])('spelling alike moves %s by %i to %s', (from, semitones, to) => {
    expect(transposeKey(from, semitones, { spelling: 'alike' }).name).toBe(to);
  });

  test('refuses parts of semitones, wrong keys and wrong spellings', () => {
    expect(() => transposeKey('C', 0.5)).toThrow(code('NUMBER_RANGE'));
    expect(() => transposeKey('C', Number.NaN)).toThrow(code('NUMBER_RANGE'));
    expect(() => transposeKey('H' as KeyName, 1)).toThrow(code('KEY_UNKNOWN'));
    expect(() => transposeKey('C', 1, { spelling: 'sharp' as 'alike' })).toThrow(
      code('OPTION_UNKNOWN'),
    );
  });
});

import { TWELVE_KEYS, toKey } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { readKeyField, readShift, signatureOf } from './key-field.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

const signature = (field: string): string =>
  [...(readKeyField(field)?.signature ?? [])]
    .map(([letter, by]) => `${by > 0 ? '^'.repeat(by) : by === 0 ? '=' : '_'.repeat(-by)}${letter}`)
    .join(' ');

describe('readKeyField', () => {
  // Circle of fifths, common practice, no source.
  test.each([
    ['C', ''],
    ['G', '^F'],
    ['D', '^F ^C'],
    ['C#', '^F ^C ^G ^D ^A ^E ^B'],
    ['F', '_B'],
    ['Eb', '_B _E _A'],
    ['Cb', '_B _E _A _D _G _C _F'],
    ['Am', ''],
    ['Em', '^F'],
    ['Cm', '_B _E _A'],
    ['F#m', '^F ^C ^G'],
  ])('readKeyField reads the signature of %s', (field, expected) => {
    expect(signature(field)).toBe(expected);
  });

  // Modes of one signature: ABC 2.1, K: key, the table of key signatures (from memory).
  test.each([
    ['GIon', 'Em', 'DMix', 'ADor', 'BPhr', 'CLyd'],
    ['BbMaj', 'Gm', 'FMix', 'CDor', 'DPhr', 'EbLyd'],
    ['A', 'F#min', 'EMixolydian', 'BDorian', 'C#Phrygian', 'DLydian'],
  ])('readKeyField gives one signature for %s, %s, %s, %s, %s and %s', (first, ...others) => {
    for (const other of others) expect(signature(other)).toBe(signature(first));
  });

  test.each([
    ['F#m', 'F#m'],
    ['Bb', 'Bb'],
    ['D dorian', 'Dm'],
    ['A Mix', 'A'],
    ['B♭', 'Bb'],
    ['F♯ minor', 'F#m'],
    ['G clef=bass', 'G'],
    ['Em transpose=2', 'Em'],
  ])('readKeyField names the key of %s %s', (field, key) => {
    expect(readKeyField(field)?.key).toBe(key);
  });

  test('readKeyField reads every key of the twelve as it is named, with as many signs as it has', () => {
    for (const { name } of TWELVE_KEYS) {
      const read = readKeyField(toKey(name).name);
      expect(read?.key).toBe(name);
      const signs = [...(read?.signature.values() ?? [])];
      expect(new Set(signs).size).toBeLessThanOrEqual(1);
      expect(signs.length).toBeLessThanOrEqual(7);
    }
  });

  test('readKeyField adds accidentals to a key, and takes signs away', () => {
    expect(signature('D =c')).toBe('^F =C');
    expect(signature('A ^g _b')).toBe('^F ^C ^G _B');
    expect(signature('none ^f')).toBe('^F');
  });

  test('readKeyField reads no key, and the keys of pipes', () => {
    expect(readKeyField('none')).toEqual({ signature: new Map() });
    expect(readKeyField('')).toEqual({ signature: new Map() });
    expect(signature('Hp')).toBe('^F ^C');
    expect(signature('HP')).toBe('');
  });

  test.each(['H', 'clef', '1', '&', 'valueOf'])('readKeyField reads no key in %j', (field) => {
    expect(readKeyField(field)).toBeUndefined();
  });

  test('readKeyField gives a signature of seven letters at most, or nothing, for any text', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 30 }), (text) => {
        const read = readKeyField(text);
        expect(read?.signature.size ?? 0).toBeLessThanOrEqual(7);
        expect(Math.abs(readShift(text))).toBeLessThanOrEqual(48);
      }),
      { numRuns: 500 },
    );
  });
});

describe('signatureOf', () => {
  test('signatureOf has as many signs as fifths, all of one kind, and two a letter beyond seven', () => {
    fc.assert(
      fc.property(fc.integer({ min: -14, max: 14 }), (fifths) => {
        const signs = [...signatureOf(fifths).values()];
        expect(signs.reduce((sum, sign) => sum + sign, 0)).toBe(fifths);
        expect(signs.every((sign) => Math.sign(sign) === Math.sign(fifths))).toBe(true);
      }),
    );
  });
});

describe('readShift', () => {
  test.each([
    ['', 0],
    ['transpose=-2', -2],
    ['octave=1', 12],
    ['octave=-1 transpose=3', -9],
    ['treble+8', 12],
    ['clef=bass-8', -12],
    ['clef=treble', 0],
    ['transpose=500', 0],
  ])('readShift of %j is %i semitones', (text, semitones) => {
    expect(readShift(text)).toBe(semitones);
  });
});

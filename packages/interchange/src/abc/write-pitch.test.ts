import { TWELVE_KEYS, toKey } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { readKeyField, type Signature } from './key-field.js';
import { readNotes } from './read-note.js';
import { ACCIDENTAL_REACHES, openVoice } from './voice.js';
import { markDoubled, writePitch } from './write-pitch.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

const keys = fc.constantFrom(...TWELVE_KEYS.map(({ name }) => name), 'Am', 'Cm', 'F#m', 'Ebm');
const signatureOf = (key: string): Signature => readKeyField(key)?.signature ?? new Map();

describe('writePitch', () => {
  test.each([
    [60, 'C', 'C'],
    [59, 'C', 'B,'],
    [72, 'C', 'c'],
    [84, 'C', "c'"],
    [24, 'C', 'C,,,'],
    [66, 'G', 'F'],
    [65, 'G', '=F'],
    [66, 'C', '_G'],
    [63, 'Eb', 'E'],
    [69, 'Eb', '=A'],
  ] as const)('writePitch writes %i in %s as %s', (pitch, key, expected) => {
    expect(writePitch(pitch, { key, signature: signatureOf(key) }, new Map())).toBe(expected);
  });

  test('writePitch writes bars that every rule of accidentals reads as the same pitches', () => {
    const pitches = fc.array(fc.integer({ min: 24, max: 108 }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(pitches, keys, fc.constantFrom(...ACCIDENTAL_REACHES), (bar, key, reach) => {
        const signature = signatureOf(toKey(key).name);
        const accidentals = new Map();
        const text = bar
          .map((pitch) => writePitch(pitch, { key, signature }, accidentals))
          .join(' ');
        const beginning = { name: '', signature, shift: 0, metre: {}, unitTicks: 480, reach };
        const voice = openVoice('1', { ...beginning, label: undefined });
        expect(readNotes(text, voice).map(({ pitch }) => pitch)).toEqual(bar);
      }),
      { numRuns: 500 },
    );
  });

  test('markDoubled gives each of two notes on one letter its sign', () => {
    const accidentals = new Map();
    markDoubled([66, 67], { key: 'C' }, accidentals);
    const names = [66, 67].map((pitch) =>
      writePitch(pitch, { key: 'C', signature: new Map() }, accidentals),
    );
    expect(names).toEqual(['_G', '=G']);
  });
});

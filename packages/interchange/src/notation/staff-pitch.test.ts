import { parseChord, TWELVE_KEYS } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { LETTER_SEMITONES, staffPitch } from './staff-pitch.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

const CHORDS = ['G7', 'E7', 'A7', 'Db7', 'C#dim7', 'F#7', 'Abdim7', 'D7b9', 'B+', 'Cm7b5'].map(
  parseChord,
);

const keys = fc.constantFrom(...TWELVE_KEYS.map(({ name }) => name), 'Cb', 'C#', 'Abm', 'A#m');

describe('staffPitch', () => {
  test.each([
    [60, 'C', 'C', 0, 4],
    [59, 'C', 'B', 0, 3],
    [59, 'Cb', 'C', -1, 4],
    [60, 'C#', 'B', 1, 3],
    [70, 'F', 'B', -1, 4],
  ] as const)(
    'staffPitch of %i in %s is %s, %i, octave %i',
    (pitch, key, letter, alteration, octave) => {
      expect(staffPitch(pitch, key)).toEqual({ letter, alteration, octave });
    },
  );

  test.each([
    [68, 'G', 'E7', 'G', 1, 4],
    [61, 'G', 'A7', 'C', 1, 4],
    [66, 'F', 'D7', 'F', 1, 4],
    [59, 'G', 'Db7', 'C', -1, 4],
    [61, 'G', 'C#dim7', 'C', 1, 4],
    [60, 'C', 'C#7', 'C', 0, 4],
  ] as const)(
    'staffPitch of %i in %s over %s is %s, %i, octave %i',
    (pitch, key, chord, letter, alteration, octave) => {
      const spelled = staffPitch(pitch, key, parseChord(chord));
      expect(spelled).toEqual({ letter, alteration, octave });
    },
  );

  test('staffPitch spells what is no tone of the chord, or would need a double sign, in the key', () => {
    expect(staffPitch(63, 'G', parseChord('E7'))).toEqual(staffPitch(63, 'G'));
    // The seventh of Abdim7 is G double flat.
    expect(staffPitch(65, 'C', parseChord('Abdim7'))).toEqual(staffPitch(65, 'C'));
  });

  test('staffPitch names a letter, sign and octave that sound the pitch again', () => {
    fc.assert(
      fc.property(
        fc.nat({ max: 127 }),
        keys,
        fc.constantFrom(undefined, ...CHORDS),
        (pitch, key, chord) => {
          const { letter, alteration, octave } = staffPitch(pitch, key as 'C', chord);
          expect((LETTER_SEMITONES.get(letter) ?? 0) + alteration + 12 * (octave + 1)).toBe(pitch);
          expect(Math.abs(alteration)).toBeLessThanOrEqual(1);
        },
      ),
    );
  });
});

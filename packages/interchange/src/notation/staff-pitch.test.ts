import { TWELVE_KEYS } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { LETTER_SEMITONES, staffPitch } from './staff-pitch.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

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

  test('staffPitch names a letter, sign and octave that sound the pitch again', () => {
    fc.assert(
      fc.property(fc.nat({ max: 127 }), keys, (pitch, key) => {
        const { letter, alteration, octave } = staffPitch(pitch, key as 'C');
        expect((LETTER_SEMITONES.get(letter) ?? 0) + alteration + 12 * (octave + 1)).toBe(pitch);
        expect(Math.abs(alteration)).toBeLessThanOrEqual(1);
      }),
    );
  });
});

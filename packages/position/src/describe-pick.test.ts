import { TECHNIQUE_LEVELS } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { midi, TWELVE_KEYS } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { describePick } from './describe-pick.js';
import { type PickOptions, pickHarps } from './pick.js';

const keys = fc.constantFrom(...TWELVE_KEYS);
const levels = fc.constantFrom(...TECHNIQUE_LEVELS);

const reasonsFor = (key: 'G', options: PickOptions = {}) => {
  const [best] = pickHarps(key, options);
  return best === undefined ? [] : describePick(best);
};

describe('describePick', () => {
  test('describePick counts as many natural tones as the pick has', () => {
    fc.assert(
      fc.property(keys, levels, (key, level) => {
        for (const pick of pickHarps(key, { level })) {
          const tones = pick.chords.flatMap((chord) => chord.tones);
          const natural = tones.filter(({ best }) => best === 'natural').length;
          expect(describePick(pick)).toContain(
            `${natural} of ${tones.length} chord tones are there unbent`,
          );
        }
      }),
      { numRuns: 20 },
    );
  });

  test('describePick names each missing and each bent tone once, and only where there is one', () => {
    fc.assert(
      fc.property(keys, levels, (key, level) => {
        for (const pick of pickHarps(key, { level })) {
          const reasons = describePick(pick);
          const said = (label: string) =>
            reasons.find((reason) => reason.startsWith(`${label}: `))?.split(', ').length ?? 0;
          const tones = pick.chords.flatMap((chord) => chord.tones);
          const missing = tones.filter(({ best }) => best === 'missing').length;
          const natural = tones.filter(({ best }) => best === 'natural').length;
          expect(said('missing')).toBe(missing);
          expect(said('bent')).toBe(tones.length - natural - missing);
        }
      }),
      { numRuns: 20 },
    );
  });

  test('describePick says of every chord whether it can be played whole', () => {
    expect(reasonsFor('G').slice(0, 2)).toEqual([
      'whole chords: G7 on draw 1-5, C7 on blow 1-10 (no b7)',
      'no whole D7',
    ]);
  });

  test('describePick says of the scale how much is there, and what is missing only where something is', () => {
    const own = ['C'];
    expect(reasonsFor('G', { own, scale: 'mixolydian' })).toContain(
      '100 % of the mixolydian scale',
    );
    // Unbent, a C harp in second position has neither the flat third nor the flat fifth.
    expect(reasonsFor('G', { own, scale: 'minor blues', level: 'natural' })).toContain(
      '63 % of the minor blues scale, without b3 b5',
    );
  });

  test('describePick speaks first of the line, where one is given', () => {
    const line = makeLine([{ start: 0, duration: 960, pitch: midi('G4') }]);
    expect(reasonsFor('G', { line, own: ['C'] })[0]).toBe(
      'the line: 100 % unbent, 0 % bent, 0 % overbent, 0 % missing',
    );
    expect(reasonsFor('G', { own: ['C'] }).join()).not.toContain('the line');
  });

  test.each([
    ['G3', 'the line an octave up:'],
    ['G1', 'the line 3 octaves up:'],
    ['G8', 'octaves down:'],
  ] as const)('describePick says by how much a line on %s is moved', (note, moved) => {
    const line = makeLine([{ start: 0, duration: 960, pitch: midi(note) }]);
    expect(reasonsFor('G', { line, own: ['C'] })[0]).toContain(moved);
  });
});

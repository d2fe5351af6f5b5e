import { makeHarp, makeTuning, soundings } from '@reedplate/layout';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { harp } from '../test/arbitraries.js';
import { easeOf, easiestOf } from './easiest.js';
import { EASE_OF_TECHNIQUE } from './weights.js';

describe('easiestOf', () => {
  const { byPitch, lowest, highest } = easiestOf(makeHarp('C'), { level: 'overbends' });

  it('prefers the unbent note to the bend and the overbend', () => {
    // G4 is natural twice, Ab4 bent or overblown, C5 natural or overblown.
    expect(byPitch.get(67)).toMatchObject({ hole: 2, breath: 'draw', technique: 'natural' });
    expect(byPitch.get(68)).toMatchObject({ technique: 'bend' });
    expect(byPitch.get(72)).toMatchObject({ hole: 4, technique: 'natural' });
  });

  it('takes the lower hole where techniques are alike', () => {
    // Hole 1 and hole 3 sound the same reeds: natural, bent and overblown alike.
    const tuning = makeTuning({ id: 'twins', blow: 'C4 E4 C4', draw: 'D4 G4 D4' });
    const twins = easiestOf(makeHarp('C', { tuning }), { level: 'overbends' });
    for (const pitch of [60, 61, 62, 63]) expect(twins.byPitch.get(pitch)?.hole).toBe(1);
  });

  it('has the ends of the reeds, and no pitch that cannot be sounded', () => {
    expect([lowest, highest]).toEqual([60, 96]);
    expect(byPitch.has(59)).toBe(false);
  });

  it('keeps for each pitch a sounding that no other of that pitch beats', () => {
    fc.assert(
      fc.property(harp, (any) => {
        const best = easiestOf(any, { level: 'overbends' }).byPitch;
        for (const sounding of soundings(any, { level: 'overbends' })) {
          const kept = best.get(sounding.pitch);
          expect(kept?.pitch).toBe(sounding.pitch);
          expect(kept === undefined ? 0 : easeOf(kept)).toBeGreaterThanOrEqual(easeOf(sounding));
        }
      }),
    );
  });
});

describe('easeOf', () => {
  it('goes by the technique', () => {
    for (const sounding of soundings(makeHarp('C'))) {
      expect(easeOf(sounding)).toBe(EASE_OF_TECHNIQUE[sounding.technique]);
    }
  });
});

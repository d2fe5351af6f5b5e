import { makeHarp, makeTuning, TECHNIQUE_LEVELS } from '@reedplate/layout';
import { PITCH_CLASSES, parseNoteName } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { harp } from '../test/arbitraries.js';
import { easiestOf } from './easiest.js';
import { reachOf } from './reach.js';
import { EASE_OF_TECHNIQUE } from './weights.js';

const HARP = makeHarp('C');
const reach = (name: string, level: (typeof TECHNIQUE_LEVELS)[number]) =>
  reachOf(easiestOf(HARP, { level }), parseNoteName(name).pitchClass);

describe('reachOf', () => {
  it('is one for a note that is natural in every octave', () => {
    expect(reach('C', 'natural')).toEqual({ best: 'natural', ease: 1 });
  });

  it('counts each octave by its easiest technique', () => {
    const { bend, overblow } = EASE_OF_TECHNIQUE;
    // Bb: 3 draw bent, 6 overblown, 10 blow bent twice.
    expect(reach('Bb', 'natural')).toEqual({ best: 'missing', ease: 0 });
    expect(reach('Bb', 'bends')).toEqual({ best: 'bend', ease: (2 * bend) / 3 });
    expect(reach('Bb', 'overbends')).toEqual({ best: 'bend', ease: (2 * bend + overblow) / 3 });
  });

  it('tells the best technique of any octave', () => {
    // F: 2 draw bent, 5 and 9 draw natural.
    expect(reach('F', 'bends')).toEqual({
      best: 'natural',
      ease: (2 + EASE_OF_TECHNIQUE.bend) / 3,
    });
  });

  it('is nothing for a note that a small harp does not span', () => {
    const small = makeHarp('C', { tuning: makeTuning({ id: 'one', blow: 'C4', draw: 'D4' }) });
    expect(reachOf(easiestOf(small, { level: 'overbends' }), 7)).toEqual({
      best: 'missing',
      ease: 0,
    });
  });

  it('counts the lowest and the highest reed', () => {
    const small = makeHarp('C', { tuning: makeTuning({ id: 'one', blow: 'C4', draw: 'D4' }) });
    const ends = easiestOf(small, { level: 'natural' });
    for (const end of [0, 2] as const)
      expect(reachOf(ends, end)).toEqual({ best: 'natural', ease: 1 });
  });

  it('tells the best technique though a worse one comes in a higher octave, or a lower one', () => {
    const rising = makeTuning({ id: 'rising', blow: 'C4 C5', draw: 'E4 D5' });
    // Eb: 1 draw bent, 2 overblown. D: 1 draw bent, 2 draw.
    const easiest = easiestOf(makeHarp('C', { tuning: rising }), { level: 'overbends' });
    expect(reachOf(easiest, 3)).toMatchObject({ best: 'bend' });
    expect(reachOf(easiest, 2)).toMatchObject({ best: 'natural' });
  });

  it('grows from level to level, within 0 and 1, and is 0 exactly where a note is missing', () => {
    fc.assert(
      fc.property(harp, fc.constantFrom(...PITCH_CLASSES), (any, pitchClass) => {
        const all = TECHNIQUE_LEVELS.map((level) => reachOf(easiestOf(any, { level }), pitchClass));
        const eases = all.map(({ ease }) => ease);
        expect(eases).toEqual([...eases].sort((a, b) => a - b));
        for (const { best, ease } of all) {
          expect(ease === 0).toBe(best === 'missing');
          expect(ease).toBeLessThanOrEqual(1);
        }
      }),
    );
  });
});

import { describe, expect, it } from 'vitest';
import { harpCaveats, makeHarp, makeTuning, TUNINGS } from './index.js';

describe('harpCaveats', () => {
  it('marks blow bends of four semitones at the top of twelve and fourteen holes', () => {
    const deep = (tuning: string) =>
      harpCaveats(makeHarp('C', { tuning })).map(({ hole, breath }) => `${hole} ${breath}`);
    expect(deep('extended-top-twelve')).toEqual(['11 blow', '12 blow']);
    expect(deep('extended-fourteen')).toEqual(['14 blow']);
  });

  it('marks a draw bend of four semitones as it does a blow bend', () => {
    const tuning = makeTuning({ id: 'deep', blow: 'C4 G4', draw: 'F4 A4' });
    const deep = makeTuning({ id: 'deeper', blow: 'C4 G4', draw: 'F4 C5' });
    const marked = (one: typeof tuning) =>
      harpCaveats(makeHarp('C', { tuning: one })).map(({ hole, breath }) => `${hole} ${breath}`);
    expect([marked(tuning), marked(deep)]).toEqual([['1 draw'], ['1 draw', '2 draw']]);
  });

  it('marks nothing of the ten-hole layouts of the catalogue', () => {
    for (const tuning of TUNINGS.filter(({ holes }) => holes.length === 10)) {
      expect(harpCaveats(makeHarp(tuning.label, { tuning }))).toEqual([]);
    }
  });

  it.each([
    ['G', 'low-low', 1],
    ['F', 'low-low', 0],
    ['E', 'low-low', 1],
    ['F', 'low', 0],
    ['G', 'high', 0],
    ['Ab', 'high', 1],
    ['F#', 'high', 1],
  ] as const)('of a harp in %s %s marks that it is not made: %i', (key, register, marks) => {
    const caveats = harpCaveats(makeHarp(key, { register }));
    expect(caveats.filter(({ code }) => code === 'KEY_NOT_MADE')).toHaveLength(marks);
  });

  it('says nothing of keys where it does not know what is made', () => {
    expect(harpCaveats(makeHarp('F#', { register: 'high', tuning: 'diminished' }))).toEqual([]);
  });

  it('names the harp, or the hole, in words', () => {
    const [key] = harpCaveats(makeHarp('G', { register: 'low-low' }));
    expect(key?.text).toBe('Harps in low-low G are not made, as far as we know.');
    const [bend] = harpCaveats(makeHarp('C', { tuning: 'extended-fourteen' }));
    expect(bend?.text).toContain('14 blow bends 4 semitones by the rule');
    expect(Object.isFrozen(bend)).toBe(true);
  });
});

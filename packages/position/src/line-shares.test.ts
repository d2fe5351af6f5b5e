import { makeHarp, makeTuning, TECHNIQUE_LEVELS } from '@reedplate/layout';
import { makeLine, transposeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { harp } from '../test/arbitraries.js';
import { easiestOf } from './easiest.js';
import { lineShares } from './line-shares.js';

const line = fc
  .array(
    fc.record({
      start: fc.nat(10_000),
      duration: fc.integer({ min: 1, max: 2000 }),
      pitch: fc.integer({ min: 40, max: 90 }),
    }),
    { minLength: 1, maxLength: 12 },
  )
  .map((notes) => makeLine(notes));

describe('lineShares', () => {
  it('shares out all of the time', () => {
    fc.assert(
      fc.property(harp, line, fc.constantFrom(...TECHNIQUE_LEVELS), (any, tune, level) => {
        const { natural, bent, overbent, missing, ease } = lineShares(
          easiestOf(any, { level }),
          tune,
        );
        expect(natural + bent + overbent + missing).toBeCloseTo(1, 9);
        expect(ease).toBeLessThanOrEqual(1 - missing + 1e-9);
        expect(ease).toBeGreaterThanOrEqual(natural - 1e-9);
        if (level === 'natural') expect([bent, overbent]).toEqual([0, 0]);
        if (level === 'bends') expect(overbent).toBe(0);
      }),
    );
  });

  it('is as easy an octave away, and moves the line back', () => {
    fc.assert(
      fc.property(line, (tune) => {
        const any = easiestOf(makeHarp('C'), {});
        const here = lineShares(any, tune);
        const there = lineShares(any, transposeLine(tune, 12));
        expect(there.ease).toBeCloseTo(here.ease, 12);
      }),
    );
  });

  it('stays in its own octave where that is as good as any', () => {
    const tune = makeLine([{ start: 0, duration: 960, pitch: 72 }]);
    expect(lineShares(easiestOf(makeHarp('C'), {}), tune)).toEqual({
      octaves: 0,
      natural: 1,
      bent: 0,
      overbent: 0,
      missing: 0,
      ease: 1,
    });
  });

  it('has the lowest and the highest pitch of MIDI, where a harp has them', () => {
    const tuning = (blow: number, draw: number) =>
      makeTuning({ id: 'edge', blow: [blow], draw: [draw] });
    const at = (pitch: number, blow: number, valved: boolean) => {
      const edge = makeHarp('C', { tuning: tuning(blow, blow + 1) });
      return lineShares(
        easiestOf(edge, { valved, level: 'overbends' }),
        makeLine([{ start: 0, duration: 1, pitch }]),
      );
    };
    // Reeds a semitone apart do not bend: the highest is overblown, the lowest a bend of a valved reed.
    expect(at(127, 125, false)).toMatchObject({ octaves: 0, overbent: 1, missing: 0 });
    expect(at(0, 2, true)).toMatchObject({ octaves: 0, bent: 1, missing: 0 });
  });

  it('prefers the smaller move, and down to up, where moves are as good', () => {
    const wide = makeTuning({ id: 'wide', blow: 'C3 C5', draw: 'C3 C5' });
    const low = easiestOf(makeHarp('C', { tuning: wide }), {});
    const at = (pitch: number) =>
      lineShares(low, makeLine([{ start: 0, duration: 1, pitch }])).octaves;
    expect([at(60), at(84), at(36)]).toEqual([-1, -1, 1]);
  });

  it('finds a line again from up to five octaves away', () => {
    const octave = easiestOf(
      makeHarp('C', { tuning: makeTuning({ id: 'one', blow: 'C4', draw: 'D4' }) }),
      {
        level: 'natural',
      },
    );
    for (const octaves of [-5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5]) {
      const tune = makeLine([{ start: 0, duration: 1, pitch: 60 - 12 * octaves }]);
      expect(lineShares(octave, tune)).toMatchObject({ octaves, natural: 1 });
    }
  });

  it('takes notes at the ends of MIDI without moving them past it', () => {
    const tune = makeLine([
      { start: 0, duration: 1, pitch: 0 },
      { start: 1, duration: 1, pitch: 127 },
    ]);
    expect(lineShares(easiestOf(makeHarp('C'), {}), tune).missing).toBeGreaterThanOrEqual(0.5);
  });
});

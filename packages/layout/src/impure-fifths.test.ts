import { describe, expect, it } from 'vitest';
import { makeHarp, TEMPERAMENTS, type TuningName, temperHarp } from './index.js';

const fifthsOf = (tuning: TuningName, temperament: string, key: 'C' | 'Gm' | 'G' = 'C') =>
  temperHarp(makeHarp(key, { tuning }), temperament).impureFifths.map(
    ({ breath, holes, cents }) => `${breath} ${holes.join('-')} ${Math.round(cents)}`,
  );

describe('impureFifths of temperHarp', () => {
  it('are none in equal temperament, on any layout', () => {
    expect(fifthsOf('standard', 'equal')).toEqual([]);
    expect(fifthsOf('natural-minor', 'equal', 'Gm')).toEqual([]);
  });

  it('are none on the standard layout where the sixth degree suits the second', () => {
    for (const { id } of TEMPERAMENTS.filter((each) => each.id !== 'five-limit')) {
      expect(fifthsOf('standard', id)).toEqual([]);
    }
  });

  it('are those more than ten cents off a pure fifth, and no nearer ones', () => {
    // A fifth of equal temperament is 1.955 cents narrow: 8.5 more are too many, 8 are not.
    const fifth = (narrower: number) => {
      const cents = [0, 0, 0, 0, 0, 0, 0, -narrower, 0, 0, 0, 0];
      const own = { ...TEMPERAMENTS[0], id: 'own', cents, octaveStretch: 0 } as never;
      return temperHarp(makeHarp('C'), own).impureFifths.map(({ breath }) => breath);
    };
    expect(fifth(8)).toEqual([]);
    expect(fifth(8.5)).toContain('blow');
  });

  it('name D to A on the draw in five-limit, 40:27, which spoils third position', () => {
    expect(fifthsOf('standard', 'five-limit')).toEqual(['draw 4-6 680', 'draw 8-10 680']);
  });

  it('say that 4:5:6:7 does not hold on natural minor: its fifth from 3 to 5 draw has 653 cents', () => {
    expect(fifthsOf('natural-minor', 'seven-limit', 'Gm')).toContain('draw 3-5 653');
    const [worst] = temperHarp(
      makeHarp('Gm', { tuning: 'natural-minor' }),
      'seven-limit',
    ).impureFifths;
    expect(worst?.deviation.toFixed(1)).toBe('-48.8');
  });

  it('leave the tonic triad of a circular layout whole, which is anchored on its major tonic', () => {
    const tuned = temperHarp(makeHarp('G', { tuning: 'circular-second-draw' }), 'seven-limit');
    const cents = (hole: number, breath: string) =>
      tuned.reeds.find((reed) => reed.hole === hole && reed.breath === breath)?.cents ?? Number.NaN;
    // C on 2 draw, E on 3 draw, G on 4 draw: 4:5:6.
    expect(400 + cents(3, 'draw') - cents(2, 'draw')).toBeCloseTo(386.31, 2);
    expect(700 + cents(4, 'draw') - cents(2, 'draw')).toBeCloseTo(701.96, 2);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { harp } from '../test/arbitraries.js';
import { makeHarp, SHADING_CENTS, shadings, soundingsAt } from './index.js';

describe('shadings', () => {
  it('finds 5 draw and 7 blow of the standard layout', () => {
    expect(shadings(makeHarp('G'))).toEqual([
      { hole: 5, breath: 'draw', pitch: 72, ...SHADING_CENTS },
      { hole: 7, breath: 'blow', pitch: 79, ...SHADING_CENTS },
    ]);
  });

  it('finds none where every hole bends, and every hole where the reeds are a semitone apart', () => {
    expect(shadings(makeHarp('C', { tuning: 'diminished' }))).toEqual([]);
    expect(shadings(makeHarp('C', { tuning: 'whole-tone' }))).toHaveLength(10);
  });

  it('shades by less than a semitone, and where there is no bend', () => {
    expect(SHADING_CENTS.usual).toBeLessThan(SHADING_CENTS.most);
    expect(SHADING_CENTS.most).toBeLessThan(100);
    fc.assert(
      fc.property(harp, (any) => {
        for (const { hole, breath, pitch } of shadings(any)) {
          const [natural, ...others] = soundingsAt(any, hole, breath, { level: 'bends' });
          expect(natural?.pitch).toBe(pitch);
          expect(others).toEqual([]);
        }
      }),
    );
  });
});

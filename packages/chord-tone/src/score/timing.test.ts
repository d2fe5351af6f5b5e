import { describe, expect, it } from 'vitest';
import type { ScoringGrid } from './grid.js';
import type { Placed } from './place-notes.js';
import { BEAT } from './play.fixture.js';
import { timingOf } from './timing.js';

const GRID = { pickup: 0, barTicks: 4 * BEAT, beatTicks: BEAT } as ScoringGrid;
/** A note so many beats late on a beat of bar 1, so many ticks long. */
const late = (beat: number, by: number, ticks: number) =>
  ({ beats: beat + by, start: (beat + by) * BEAT, end: (beat + by) * BEAT + ticks }) as Placed;

describe('timingOf', () => {
  it('timingOf goes by notes of an eighth of a beat and more', () => {
    const at = (ticks: number) =>
      timingOf(
        [0, 1, 2].map((beat) => late(beat, 0.1, ticks)),
        GRID,
        1,
      ).bars;
    expect(at(120)).toEqual([{ bar: 1, late: expect.closeTo(0.1, 9) }]);
    expect(at(119)).toEqual([]);
  });

  it('timingOf follows a player who comes later and later, and says by how much', () => {
    const bars = Array.from({ length: 9 }, (_, bar) => late(4 * bar, 0.03 * bar, 480));
    const { drift, late: whole, loose } = timingOf(bars, GRID, 1);
    expect(drift).toBeCloseTo(0.18, 9);
    expect(whole).toBeCloseTo(0.12, 9);
    expect(loose).toBeGreaterThan(0);
    expect(timingOf([], GRID, 1)).toEqual({ loose: null, late: 0, drift: 0, swing: 1, bars: [] });
  });
});

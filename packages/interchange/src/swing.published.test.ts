import { makeLine } from '@reedplate/line';
import { expect, test } from 'vitest';
import { published } from '../../../test/sources/published.js';
import { applySwing } from './swing.js';

/** Where an off-beat eighth sounds within its beat of 960 ticks, and the length before it to that after. */
function offBeatAt(ratio?: number): { readonly tick: number; readonly ratio: number } {
  const even = makeLine([{ start: 480, duration: 480, pitch: 67 }]);
  const [note] = applySwing(even, ratio === undefined ? {} : { ratio }).notes;
  const tick = note?.start ?? 0;
  return { tick, ratio: tick / (960 - tick) };
}

published(
  'friberg',
  'ratios of drummers: 3.5 to 1 when slow, a triplet at one tempo only, 1 to 1 when fast',
  () => {
    test.each([
      [3.5, 747],
      [2, 640],
      [1, 480],
    ])('applySwing at %d to 1 puts the off-beat on tick %i', (ratio, tick) => {
      expect(offBeatAt(ratio).tick).toBe(tick);
      expect(offBeatAt(ratio).ratio).toBeCloseTo(ratio, 1);
    });

    test('applySwing leaves about 100 ms for the short note at 133 beats a minute and 3.5 to 1', () => {
      const short = 1 - offBeatAt(3.5).tick / 960;
      expect(Math.abs((short * 60_000) / 133 - 100)).toBeLessThan(1);
    });
  },
);

published('corcoran', 'ratio of soloists, about 1.3 to 1, where our default is the triplet', () => {
  test('applySwing at 1.3 to 1 puts the off-beat before the triplet, which is the default', () => {
    expect(offBeatAt(1.3).ratio).toBeCloseTo(1.3, 2);
    expect(offBeatAt().ratio).toBe(2);
    expect(offBeatAt(1.3).tick).toBeLessThan(offBeatAt().tick);
  });
});

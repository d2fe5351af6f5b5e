import { expect, test } from 'vitest';
import { published } from '../../../test/sources/published.js';
import { SHUFFLE_RATIO, swingRatio } from './swing.js';

published(
  'friberg',
  "drummers' cymbals: 3.5 to 1 when slow, 1 to 1 when fast, the short note near 100 ms",
  () => {
    test('swingRatio of a band is 3.5 when slow, even when fast, and falls between', () => {
      expect(swingRatio('band', 120)).toBe(3.5);
      expect(swingRatio('band', 320)).toBe(1);
      const between = [140, 160, 180, 200, 220, 240, 260, 280, 300].map((tempo) =>
        swingRatio('band', tempo),
      );
      expect(between).toEqual([...between].sort((a, b) => b - a));
    });

    test('swingRatio of a band leaves 100 ms for the short eighth at medium and fast tempos', () => {
      for (const tempo of [140, 200, 260, 300]) {
        const short = 60_000 / tempo / (swingRatio('band', tempo) + 1);
        expect(Math.abs(short - 100)).toBeLessThan(0.1);
      }
    });

    test('swingRatio of a soloist is smaller than that of the band, but for fast tempos where both are even', () => {
      for (const tempo of [60, 120, 180, 240, 255]) {
        expect(swingRatio('soloist', tempo)).toBeLessThan(swingRatio('band', tempo));
      }
      expect(swingRatio('soloist', 320)).toBe(1);
    });
  },
);

published('corcoran', "soloists' eighths: about 1.3 to 1", () => {
  test('swingRatio of a soloist is 1.3 at slow and medium tempos', () => {
    for (const tempo of [80, 120, 200]) expect(swingRatio('soloist', tempo)).toBe(1.3);
  });
});

published('practice', 'a blues shuffle is a triplet: two to one', () => {
  test('SHUFFLE_RATIO is the triplet of a blues shuffle', () => {
    expect(SHUFFLE_RATIO).toBe(2);
  });
});

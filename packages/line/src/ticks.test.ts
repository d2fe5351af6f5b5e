import { expect, test } from 'vitest';
import { TICKS_PER_QUARTER } from './ticks.js';

test('TICKS_PER_QUARTER divides into the notes and tuplets of the trade', () => {
  for (const parts of [2, 3, 4, 5, 6, 8, 12, 16]) expect(TICKS_PER_QUARTER % parts).toBe(0);
});

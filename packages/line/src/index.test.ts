import { expect, test } from 'vitest';
import * as line from './index.js';

test('the package exports these names, so that a change is seen', () => {
  expect(Object.keys(line).sort()).toMatchInlineSnapshot(`
    [
      "TICKS_PER_QUARTER",
      "barBeatAt",
      "commonDivisor",
      "lineEnd",
      "makeLine",
      "parseMetre",
      "readLine",
      "requireNotes",
      "tickAt",
      "transposeLine",
    ]
  `);
});

test('TICKS_PER_QUARTER divides into the notes and tuplets of the trade', () => {
  for (const parts of [2, 3, 4, 5, 6, 8, 12, 16]) expect(line.TICKS_PER_QUARTER % parts).toBe(0);
});

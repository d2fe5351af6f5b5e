import type { FormRow } from './form-row.js';
import { COMMON_PRACTICE, MEMORY } from './sources.js';

/** Irregular lengths, other metres, and the vamp. */
export const OTHER_FORMS = /* @__PURE__ */ (() =>
  [
    [
      'ten-bar',
      'Ten-bar',
      'The twelve-bar with one bar each for V and I at the end.',
      'Country blues that cut the pause after the last line.',
      MEMORY,
      '| I7 | % | % | % || IV7 | % | I7 | % || V7 | I7 |',
    ],
    [
      'eleven-bar',
      'Eleven-bar',
      'The basic twelve bars without the last: the next chorus comes a bar early.',
      'Solo players who do not wait for bar 12.',
      MEMORY,
      '| I7 | % | % | % || IV7 | % | I7 | % || V7 | IV7 | I7 |',
    ],
    [
      'thirteen-bar',
      'Thirteen-bar',
      'The basic twelve bars with a second bar of I between IV and the V of the last bar.',
      'Solo players who answer the last line at length.',
      MEMORY,
      '| I7 | % | % | % || IV7 | % | I7 | % || V7 | IV7 | I7 | % | V7 |',
    ],
    [
      'waltz',
      'Twelve-bar in three-four',
      'The twelve-bar as a waltz, with ♭VI–V in bars 9 and 10.',
      'Jazz waltzes.',
      MEMORY,
      '| I7 | % | % | % || IV7 | % | I7 | % || bVI7 | V7 | I7 | % |',
      { metre: '3/4', feel: 'straight' },
    ],
    [
      'minor-six-eight',
      'Minor twelve-bar in six-eight',
      'Minor triads in six-eight, with ♭VI and V7 in bars 9 and 10.',
      'Minor soul blues.',
      MEMORY,
      '| i | % | % | % || iv | % | i | % || bVI | V7 | i | V7 |',
      { mode: 'minor', metre: '6/8', feel: 'straight' },
    ],
    [
      'vamp',
      'One-chord vamp',
      'Four bars of I, over and over.',
      'Drone blues, boogies and talking introductions.',
      COMMON_PRACTICE,
      '| I7 | % | % | % |',
    ],
    [
      'minor-vamp',
      'Minor one-chord vamp',
      'Four bars of i, over and over.',
      'Minor drone blues and funk.',
      COMMON_PRACTICE,
      '| i7 | % | % | % |',
      { mode: 'minor' },
    ],
  ] as const satisfies readonly FormRow[])();

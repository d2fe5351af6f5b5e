import type { FormRow } from './form-row.js';
import { SOURCES } from './sources.js';

/** Irregular lengths, other metres, and the vamp. */
export const OTHER_FORMS = /* @__PURE__ */ (() =>
  [
    {
      id: 'ten-bar',
      name: 'Ten-bar',
      description: 'The twelve-bar with one bar each for V and I at the end.',
      use: 'Country blues that cut the pause after the last line.',
      source: SOURCES.memory,
      bars: `| I7 | % | % | % |
           | IV7 | % | I7 | % |
           | V7 | I7 |`,
    },
    {
      id: 'eleven-bar',
      name: 'Eleven-bar',
      description: 'The basic twelve bars without the last: the next chorus comes a bar early.',
      use: 'Solo players who do not wait for bar 12.',
      source: SOURCES.memory,
      bars: `| I7 | % | % | % |
           | IV7 | % | I7 | % |
           | V7 | IV7 | I7 |`,
    },
    {
      id: 'thirteen-bar',
      name: 'Thirteen-bar',
      description:
        'The basic twelve bars with a second bar of I between IV and the V of the last bar.',
      use: 'Solo players who answer the last line at length.',
      source: SOURCES.memory,
      bars: `| I7 | % | % | % |
           | IV7 | % | I7 | % |
           | V7 | IV7 | I7 | % | V7 |`,
    },
    {
      id: 'waltz',
      name: 'Twelve-bar in three-four',
      description: 'The twelve-bar as a waltz, with ♭VI–V in bars 9 and 10.',
      use: 'Jazz waltzes.',
      source: SOURCES.memory,
      metre: '3/4',
      feel: 'straight',
      bars: `| I7 | % | % | % |
           | IV7 | % | I7 | % |
           | bVI7 | V7 | I7 | % |`,
    },
    {
      id: 'minor-six-eight',
      name: 'Minor twelve-bar in six-eight',
      mode: 'minor',
      description: 'Minor triads in six-eight, with ♭VI and V7 in bars 9 and 10.',
      use: 'Minor soul blues.',
      source: SOURCES.memory,
      metre: '6/8',
      feel: 'straight',
      bars: `| i | % | % | % |
           | iv | % | i | % |
           | bVI | V7 | i | V7 |`,
    },
    {
      id: 'vamp',
      name: 'One-chord vamp',
      description: 'Four bars of I, over and over.',
      use: 'Drone blues, boogies and talking introductions.',
      source: SOURCES.commonPractice,
      bars: '| I7 | % | % | % |',
    },
    {
      id: 'minor-vamp',
      name: 'Minor one-chord vamp',
      mode: 'minor',
      description: 'Four bars of i, over and over.',
      use: 'Minor drone blues and funk.',
      source: SOURCES.commonPractice,
      bars: '| i7 | % | % | % |',
    },
  ] as const satisfies readonly FormRow[])();

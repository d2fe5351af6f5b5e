import type { FormRow } from './form-row.js';
import { SOURCES } from './sources.js';

/** Sixteen bars and more. */
export const LONGER_FORMS = /* @__PURE__ */ (() =>
  [
    {
      id: 'sixteen-bar',
      name: 'Sixteen-bar, longer beginning',
      description: 'Eight bars of I, then the last eight of the twelve-bar.',
      use: 'Story songs: the first line is told at length.',
      source: SOURCES.sixteenBar,
      bars: `| I7 | % | % | % |
           | I7 | % | % | % |
           | IV7 | % | I7 | % |
           | V7 | IV7 | I7 | % |`,
    },
    {
      id: 'sixteen-bar-longer-ending',
      name: 'Sixteen-bar, longer ending',
      description: 'V and IV for two bars each and I for four close the twelve-bar.',
      use: 'Ballads and country blues.',
      source: SOURCES.sixteenBar,
      bars: `| I7 | % | % | % |
           | IV7 | % | I7 | % |
           | V7 | % | IV7 | % |
           | I7 | % | % | % |`,
    },
    {
      id: 'sixteen-bar-middle-again',
      name: 'Sixteen-bar, middle line twice',
      description: 'Bars 5 to 8 of the twelve-bar are played twice.',
      use: 'Songs with a repeated second line.',
      source: SOURCES.sixteenBar,
      bars: `| I7 | % | % | % |
           | IV7 | % | I7 | % |
           | IV7 | % | I7 | % |
           | V7 | IV7 | I7 | % |`,
    },
    {
      id: 'sixteen-bar-cadence-again',
      name: 'Sixteen-bar, V–IV three times',
      description: 'Bars 9 and 10 of the twelve-bar are played three times.',
      use: 'Rhythm and blues with a repeated hook.',
      source: SOURCES.sixteenBarOlder,
      bars: `| I7 | % | % | % |
           | IV7 | % | I7 | % |
           | V7 | IV7 | V7 | IV7 |
           | V7 | IV7 | I7 | % |`,
    },
    {
      id: 'sixteen-bar-cadence-and-ending',
      name: 'Sixteen-bar, V–IV twice and a longer ending',
      description: 'Bars 9 and 10 of the twelve-bar are played twice, and I is held for four bars.',
      use: 'Songs with a refrain over the last four bars.',
      source: `${SOURCES.sixteenBarOlder}, variety 3`,
      bars: `| I7 | % | % | % |
           | IV7 | % | I7 | % |
           | V7 | IV7 | V7 | IV7 |
           | I7 | % | % | % |`,
    },
    {
      id: 'ragtime-sixteen-bar',
      name: 'Ragtime cycle, sixteen bars',
      description:
        'I, VI7, II7 and V7 for two bars each, twice; the second time V7 leads home to I.',
      use: 'Ragtime blues and hokum songs.',
      source: `${SOURCES.ragtime} (the cycle); its sixteen bars: ${SOURCES.commonPractice}`,
      bars: `| I | % | VI7 | % |
           | II7 | % | V7 | % |
           | I | % | VI7 | % |
           | II7 | V7 | I | % |`,
    },
    {
      id: 'sixteen-bar-doubled-eight',
      name: 'Sixteen-bar, the eight-bar at double length',
      description: 'The commonest eight bars, each chord twice as long.',
      use: 'Fast eight-bar tunes counted in half time.',
      source: SOURCES.sixteenBar,
      bars: `| I | % | % | % |
           | IV | % | % | % |
           | I | % | V | % |
           | I | IV | I | V |`,
    },
    {
      id: 'twenty-four-bar',
      name: 'Twenty-four-bar',
      description: 'The basic twelve bars at double length, with V in the last bar only.',
      use: 'Fast tunes counted in double time.',
      source: `${SOURCES.doubled}; ${SOURCES.twelveBar}`,
      bars: `| I7 | % | % | % |
           | I7 | % | % | % |
           | IV7 | % | % | % |
           | I7 | % | % | % |
           | V7 | % | IV7 | % |
           | I7 | % | % | V7 |`,
    },
    {
      id: 'eight-bar-with-bridge',
      name: 'Eight-bar with a bridge',
      description: 'Two eight-bar verses, an eight-bar bridge from IV to V, and a last verse.',
      use: 'Blues songs of thirty-two bars.',
      source: `${SOURCES.eightBar} (that there are such); bridge: ${SOURCES.memory}`,
      bars: `| I | % | IV | % |
           | I | V | I IV | I V |
           | I | % | IV | % |
           | I | V | I IV | I V |
           | IV | % | I | % |
           | II7 | % | V7 | % |
           | I | % | IV | % |
           | I | V | I IV | I V |`,
    },
    {
      id: 'twelve-bar-with-bridge',
      name: 'Twelve-bar with a bridge',
      description: 'Two twelve-bar verses, an eight-bar bridge from IV to V, and a last verse.',
      use: 'Rhythm and blues songs of forty-four bars.',
      source: SOURCES.memory,
      bars: `| I7 | % | % | % |
           | IV7 | % | I7 | % |
           | V7 | IV7 | I7 | % |
           | I7 | % | % | % |
           | IV7 | % | I7 | % |
           | V7 | IV7 | I7 | % |
           | IV7 | % | I7 | % |
           | II7 | % | V7 | % |
           | I7 | % | % | % |
           | IV7 | % | I7 | % |
           | V7 | IV7 | I7 | % |`,
    },
  ] as const satisfies readonly FormRow[])();

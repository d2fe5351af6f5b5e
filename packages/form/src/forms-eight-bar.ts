import type { FormRow } from './form-row.js';
import { SOURCES } from './sources.js';

/** Eight bars, with the qualities their sources print. */
export const EIGHT_BAR_FORMS = /* @__PURE__ */ (() =>
  [
    {
      id: 'eight-bar',
      name: 'Eight-bar',
      description: 'I for two bars, IV for two, then I–V and a turnaround in half bars.',
      use: 'The commonest eight-bar blues.',
      source: SOURCES.eightBar,
      bars: `| I | % | IV | % |
           | I | V | I IV | I V |`,
    },
    {
      id: 'eight-bar-five-second',
      name: 'Eight-bar, V in bar 2',
      description: 'V already in bar 2, then IV for two bars; V and IV share bar 6.',
      use: 'Slow eight-bar blues.',
      source: SOURCES.eightBar,
      bars: `| I | V7 | IV7 | % |
           | I | V7 IV7 | I | V7 |`,
    },
    {
      id: 'eight-bar-five-second-turnaround',
      name: 'Eight-bar, V in bar 2, turnaround in half bars',
      description: 'V in bar 2, IV for two bars, I–V, then I–IV and I–V in half bars.',
      use: 'Eight-bar blues at medium tempo.',
      source: SOURCES.commonPractice,
      bars: `| I | V | IV | % |
           | I | V | I IV | I V |`,
    },
    {
      id: 'eight-bar-five-second-back',
      name: 'Eight-bar, V in bar 2, back to I7 in bar 3',
      description: 'I, V, I7 and IV, a bar each, then I–V and a turnaround in half bars.',
      use: 'Ballads of eight bars.',
      source: SOURCES.commonPractice,
      bars: `| I | V | I7 | IV |
           | I | V | I IV | I V |`,
    },
    {
      id: 'ragtime-eight-bar',
      name: 'Ragtime cycle, eight bars',
      description:
        'I, VI7, II7 and V7, a bar each; the second time II7 and V7 share a bar, and I closes.',
      use: 'Ragtime blues, hokum songs and jug bands.',
      source: `${SOURCES.ragtime} (the cycle); its eight bars: ${SOURCES.commonPractice}`,
      bars: `| I | VI7 | II7 | V7 |
           | I | VI7 | II7 V7 | I |`,
    },
    {
      id: 'eight-bar-five-second-sevenths',
      name: 'Eight-bar, V in bar 2, sevenths throughout',
      description: 'V in bar 2, IV for two bars, then I and V in turn.',
      use: 'Eight-bar shuffles.',
      source: SOURCES.eightBar,
      bars: `| I7 | V7 | IV7 | % |
           | I7 | V7 | I7 | V7 |`,
    },
    {
      id: 'eight-bar-late-four',
      name: 'Eight-bar, IV in bar 5, V–I',
      description: 'I for four bars, IV for two, then one bar of V and one of I: no turnaround.',
      use: 'Boogie and vaudeville blues.',
      source: SOURCES.eightBar,
      bars: `| I | % | % | % |
           | IV | % | V | I |`,
    },
    {
      id: 'eight-bar-late-four-open',
      name: 'Eight-bar, IV in bar 5, V–V',
      description: 'Four bars of I, two of IV and two of V: it asks for the next chorus.',
      use: 'Riff tunes.',
      source: SOURCES.eightBar,
      bars: `| I | % | % | % |
           | IV | % | V | % |`,
    },
    {
      id: 'eight-bar-four-five',
      name: 'Eight-bar, IV–V–I–V',
      description: 'Four bars of I, then IV, V, I and V, a bar each.',
      use: 'Jump blues.',
      source: SOURCES.eightBar,
      bars: `| I7 | % | % | % |
           | IV7 | V7 | I7 | V7 |`,
    },
    {
      id: 'eight-bar-minor-four',
      name: 'Eight-bar with minor iv',
      description: 'I turns to I7, IV to iv, then I and V in turn.',
      use: 'Soul blues and ballads in six-eight.',
      source: `${SOURCES.eightBarOlder}; metre: ${SOURCES.memory}`,
      metre: '6/8',
      feel: 'straight',
      bars: `| I | I7 | IV | iv |
           | I | V | I | V |`,
    },
    {
      id: 'eight-bar-minor-four-turnaround',
      name: 'Eight-bar with minor iv, turnaround in half bars',
      description: 'I turns to I7, IV to iv, then I–V, and I–IV and I–V in half bars.',
      use: 'Country blues ballads and their electric versions.',
      source: SOURCES.magazineSecond,
      bars: `| I | I7 | IV | iv |
           | I | V | I IV | I V |`,
    },
    {
      id: 'eight-bar-plagal',
      name: 'Eight-bar, half-bar IV',
      description: 'IV in half of bar 1 and in bars 3 and 6, V only in half of bar 7.',
      use: 'Gospel blues.',
      source: `${SOURCES.eightBarOlder}, reduced from beats to bars`,
      bars: `| I IV | I | IV | I |
           | I | IV | I V | I |`,
    },
    {
      id: 'eight-bar-last-eight',
      name: 'Eight-bar, the last eight of twelve',
      description: 'The basic twelve bars without the first four.',
      use: 'Short verses and solos.',
      source: SOURCES.eightBar,
      bars: `| IV | % | I | % |
           | V | IV | I | % |`,
    },
  ] as const satisfies readonly FormRow[])();

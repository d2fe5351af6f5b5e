import type { FormRow } from './form-row.js';
import { SOURCES } from './sources.js';

/** Twelve bars in dominant sevenths: the basic form, the quick change and their endings. */
export const TWELVE_BAR_FORMS = /* @__PURE__ */ (() =>
  [
    {
      id: 'basic',
      name: 'Basic twelve-bar',
      description: 'Four bars of I, two of IV, two of I, then V, IV, I and V to turn around.',
      use: 'Shuffles and most blues called without further word.',
      source: `${SOURCES.twelveBar}; V in bar 12: ${SOURCES.commonPractice}`,
      bars: `| I7 | % | % | % |
           | IV7 | % | I7 | % |
           | V7 | IV7 | I7 | V7 |`,
    },
    {
      id: 'quick-change',
      name: 'Quick-change twelve-bar',
      description: 'The basic twelve bars with IV already in bar 2.',
      use: 'Slow blues and most band arrangements.',
      source: `${SOURCES.twelveBar}; bars 10 and 12: ${SOURCES.commonPractice}`,
      bars: `| I7 | IV7 | I7 | % |
           | IV7 | % | I7 | % |
           | V7 | IV7 | I7 | V7 |`,
    },
    {
      id: 'basic-tonic-ending',
      name: 'Basic twelve-bar, V–IV–I–I',
      description: 'The basic twelve bars without a turnaround: bars 11 and 12 stay on I.',
      use: 'Shuffles; the last chorus of the basic form.',
      source: SOURCES.twelveBar,
      bars: `| I7 | % | % | % |
           | IV7 | % | I7 | % |
           | V7 | IV7 | I7 | % |`,
    },
    {
      id: 'basic-two-bars-of-v',
      name: 'Basic twelve-bar, V–V–I–I',
      description: 'The older form: V is held for bars 9 and 10.',
      use: 'Early blues, country blues and boogie.',
      source: SOURCES.twelveBar,
      bars: `| I7 | % | % | % |
           | IV7 | % | I7 | % |
           | V7 | % | I7 | % |`,
    },
    {
      id: 'basic-two-bars-of-v-turnaround',
      name: 'Basic twelve-bar, V–V–I–V',
      description: 'The older form, with V in bar 12 to turn around.',
      use: 'Boogie and early rock and roll.',
      source: `${SOURCES.twelveBar}; V in bar 12: ${SOURCES.commonPractice}`,
      bars: `| I7 | % | % | % |
           | IV7 | % | I7 | % |
           | V7 | % | I7 | V7 |`,
    },
    {
      id: 'quick-change-tonic-ending',
      name: 'Quick-change twelve-bar, V–IV–I–I',
      description: 'The quick change without a turnaround.',
      use: 'The last chorus of the quick-change form.',
      source: SOURCES.commonPractice,
      bars: `| I7 | IV7 | I7 | % |
           | IV7 | % | I7 | % |
           | V7 | IV7 | I7 | % |`,
    },
    {
      id: 'quick-change-two-bars-of-v',
      name: 'Quick-change twelve-bar, V–V–I–I',
      description: 'The quick change with V held for bars 9 and 10.',
      use: 'Early blues and swing.',
      source: SOURCES.twelveBar,
      bars: `| I7 | IV7 | I7 | % |
           | IV7 | % | I7 | % |
           | V7 | % | I7 | % |`,
    },
    {
      id: 'quick-change-two-bars-of-v-turnaround',
      name: 'Quick-change twelve-bar, V–V–I–V',
      description: 'The quick change with V held for bars 9 and 10 and again in bar 12.',
      use: 'Jump blues.',
      source: SOURCES.commonPractice,
      bars: `| I7 | IV7 | I7 | % |
           | IV7 | % | I7 | % |
           | V7 | % | I7 | V7 |`,
    },
    {
      id: 'rock',
      name: 'Rock twelve-bar',
      description: 'Triads, with sevenths in bars 4, 6, 8, 9 and 11; both last bars on I.',
      use: 'Rock and roll.',
      source: SOURCES.commonPractice,
      feel: 'straight',
      bars: `| I | % | % | I7 |
           | IV | IV7 | I | I7 |
           | V7 | IV | I7 | I |`,
    },
    {
      id: 'quick-change-late-sevenths',
      name: 'Quick-change twelve-bar, late sevenths',
      description: 'Plain chords with the quick change; a seventh is added just before each move.',
      use: 'Rhythm and blues, and songs at the piano.',
      source: SOURCES.twelveBar,
      bars: `| I | IV | I | I7 |
           | IV | IV7 | I | I7 |
           | V | IV | I | V7 |`,
    },
    {
      id: 'flat-six-cadence',
      name: 'Twelve-bar, V–♭VI–V',
      description: 'The quick change with ♭VI between two chords of V in bars 9 and 10.',
      use: 'Slow blues and soul blues.',
      source: SOURCES.memory,
      bars: `| I7 | IV7 | I7 | % |
           | IV7 | % | I7 | % |
           | V7 | bVI7 V7 | I7 | V7 |`,
    },
    {
      id: 'diminished',
      name: 'Twelve-bar with a diminished passing chord',
      description: 'The quick change with ♯IV diminished in bar 6, between IV and I.',
      use: 'Swing, ragtime blues and jump blues.',
      source: SOURCES.commonPractice,
      bars: `| I7 | IV7 | I7 | % |
           | IV7 | #ivdim7 | I7 | % |
           | V7 | IV7 | I7 | V7 |`,
    },
    {
      id: 'slow-ninths',
      name: 'Slow twelve-bar in ninths',
      description: 'The quick change in ninth chords, with I–IV–I–V in the last two bars.',
      use: 'Slow blues in twelve-eight.',
      source: SOURCES.commonPractice,
      metre: '12/8',
      feel: 'slow-12/8',
      bars: `| I9 | IV9 | I9 | % |
           | IV9 | % | I9 | % |
           | V9 | IV9 | I9 IV9 | I9 V9 |`,
    },
  ] as const satisfies readonly FormRow[])();

import type { FormRow } from './form-row.js';
import { SOURCES } from './sources.js';

/** Twelve bars on a minor tonic. */
export const MINOR_FORMS = /* @__PURE__ */ (() =>
  [
    {
      id: 'minor',
      name: 'Minor twelve-bar with V7',
      mode: 'minor',
      description: 'Minor sevenths on i and iv; V keeps its major third in bars 9 and 12.',
      use: 'Slow minor blues.',
      source: `${SOURCES.magazine} (V7 in bars 9 and 12); bar 10: ${SOURCES.memory}`,
      bars: `| i7 | % | % | % |
           | iv7 | % | i7 | % |
           | V7 | iv7 | i7 | V7 |`,
    },
    {
      id: 'minor-two-bars-of-v',
      name: 'Minor twelve-bar, two bars of V7',
      mode: 'minor',
      description: 'Minor sevenths on i and iv; V7 for bars 9 and 10, then i to end.',
      use: 'The plainest minor blues in jazz; V7 is often altered.',
      source: SOURCES.minorPlain,
      bars: `| i7 | % | % | % |
           | iv7 | % | i7 | % |
           | V7 | % | i7 | % |`,
    },
    {
      id: 'minor-five-minor',
      name: 'Minor twelve-bar with minor v',
      mode: 'minor',
      description: 'Every chord minor: i, iv and v.',
      use: 'Rural minor blues and minor funk.',
      source: `${SOURCES.minor} (iv in bar 5, cadence from bar 9); bars: ${SOURCES.memory}`,
      bars: `| i | % | % | % |
           | iv | % | i | % |
           | v | iv | i | % |`,
    },
    {
      id: 'minor-flat-six',
      name: 'Minor twelve-bar, ♭VI–V',
      mode: 'minor',
      description: 'Minor sevenths, with ♭VI7 and V7 in bars 9 and 10.',
      use: 'Slow minor blues in twelve-eight.',
      source: `${SOURCES.magazine} (bars 9 and 10); the rest: ${SOURCES.commonPractice}`,
      metre: '12/8',
      feel: 'slow-12/8',
      bars: `| i7 | % | % | % |
           | iv7 | % | i7 | % |
           | bVI7 | V7 | i7 | V7 |`,
    },
    {
      id: 'minor-flat-six-tonic-ending',
      name: 'Minor twelve-bar, ♭VI–V, tonic ending',
      mode: 'minor',
      description:
        'Minor sevenths, with ♭VI7 and V7 in bars 9 and 10, and i for the last two bars.',
      use: 'Minor blues in jazz, at medium tempo.',
      source: `${SOURCES.minorFlatSix}; the sevenths: ${SOURCES.commonPractice}`,
      bars: `| i7 | % | % | % |
           | iv7 | % | i7 | % |
           | bVI7 | V7 | i7 | % |`,
    },
    {
      id: 'minor-flat-six-major-seventh',
      name: 'Minor twelve-bar, ♭VImaj7–V',
      mode: 'minor',
      description: 'As ♭VI–V, with a major seventh on ♭VI and i to end.',
      use: 'Minor blues in jazz and funk.',
      source: `${SOURCES.magazine} (♭VI as a major seventh); the rest: ${SOURCES.commonPractice}`,
      bars: `| i7 | % | % | % |
           | iv7 | % | i7 | % |
           | bVImaj7 | V7 | i7 | % |`,
    },
    {
      id: 'minor-alternating',
      name: 'Minor twelve-bar, i and v in turn',
      mode: 'minor',
      description: 'v follows i bar by bar, with ♭VI–V in bars 9 and 10.',
      use: 'Minor rhythm and blues.',
      source: SOURCES.commonPractice,
      bars: `| i | v | i | v |
           | iv | % | i | v |
           | bVI | V | i | V |`,
    },
    {
      id: 'minor-quick-change',
      name: 'Minor quick change',
      mode: 'minor',
      description: 'The minor twelve bars with iv already in bar 2.',
      use: 'Minor shuffles.',
      source: SOURCES.commonPractice,
      bars: `| i7 | iv7 | i7 | % |
           | iv7 | % | i7 | % |
           | V7 | iv7 | i7 | V7 |`,
    },
    {
      id: 'minor-jazz',
      name: 'Minor jazz twelve-bar',
      mode: 'minor',
      description: 'ii half-diminished and V7 for the cadence, and v–I into iv.',
      use: 'Minor blues in jazz.',
      source: `${SOURCES.magazine} (ii is m7♭5); the rest: ${SOURCES.memory}`,
      bars: `| i7 | iim7b5 V7 | i7 | v7 I7b9 |
           | iv7 | % | i7 | % |
           | iim7b5 | V7 | i7 | iim7b5 V7 |`,
    },
  ] as const satisfies readonly FormRow[])();

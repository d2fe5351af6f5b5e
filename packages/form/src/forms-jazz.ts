import type { FormRow } from './form-row.js';
import { SOURCES } from './sources.js';

/** Twelve bars with ii–V, secondary dominants and major sevenths. */
export const JAZZ_FORMS = /* @__PURE__ */ (() =>
  [
    {
      id: 'jazz',
      name: 'Jazz twelve-bar',
      description: 'The quick change with ii–V in bars 9 and 10 and a turnaround through VI.',
      use: 'Jam sessions in jazz.',
      source: SOURCES.commonPractice,
      bars: `| I7 | IV7 | I7 | % |
           | IV7 | % | I7 | % |
           | ii7 | V7 | I7 V7/ii | ii7 V7 |`,
    },
    {
      id: 'jazz-plain',
      name: 'Twelve-bar with ii–V',
      description: 'The basic twelve bars with ii–V in bars 9 and 10 and no turnaround.',
      use: 'Riff tunes in jazz.',
      source: SOURCES.commonPractice,
      bars: `| I7 | % | % | % |
           | IV7 | % | I7 | % |
           | ii7 | V7 | I7 | % |`,
    },
    {
      id: 'jazz-five',
      name: 'Jazz twelve-bar, V in bar 12',
      description: 'The quick change with ii–V in bars 9 and 10, and V to turn around.',
      use: 'Jazz at medium tempo.',
      source: SOURCES.commonPractice,
      bars: `| I7 | IV7 | I7 | % |
           | IV7 | % | I7 | % |
           | ii7 | V7 | I7 | V7 |`,
    },
    {
      id: 'jazz-three-six-five',
      name: 'Jazz twelve-bar with iii–VI, V in bar 12',
      description: 'iii–VI in bar 8 leads to ii–V in bars 9 and 10; V to turn around.',
      use: 'Jazz at medium tempo.',
      source: SOURCES.commonPractice,
      bars: `| I7 | IV7 | I7 | % |
           | IV7 | % | I7 | iii7 VI7 |
           | ii7 | V7 | I7 | V7 |`,
    },
    {
      id: 'jazz-six-dominant',
      name: 'Jazz twelve-bar with VI7 in bar 8',
      description: 'VI7 in bar 8 leads to ii–V in bars 9 and 10; no turnaround.',
      use: 'Swing; the last chorus of the jazz form.',
      source: `${SOURCES.commonPractice}; the VI7 of bar 8: ${SOURCES.twelveBar}`,
      bars: `| I7 | IV7 | I7 | % |
           | IV7 | % | I7 | VI7 |
           | ii7 | V7 | I7 | % |`,
    },
    {
      id: 'jazz-three-six',
      name: 'Jazz twelve-bar with iii–VI',
      description: '♯IV diminished in bar 6, and iii–VI in bars 8 and 11, each leading to ii–V.',
      use: 'Swing and bebop in the usual key of B flat.',
      source: SOURCES.twelveBarJazz,
      bars: `| I7 | IV7 | I7 | % |
           | IV7 | #ivdim7 | I7 | iii7 VI7 |
           | ii7 | V7 | iii7 VI7 | ii7 V7 |`,
    },
    {
      id: 'bebop',
      name: 'Bebop twelve-bar',
      description: 'v–I into IV, ♯IV diminished, iii–VI into ii–V, and a full turnaround.',
      use: 'Bebop.',
      source: `${SOURCES.memory}; the VI7♭9 of bar 8: ${SOURCES.twelveBar}`,
      bars: `| I7 | IV7 | I7 | v7 I7 |
           | IV7 | #ivdim7 | I7 | iii7 VI7b9 |
           | ii7 | V7 | I7 VI7 | ii7 V7 |`,
    },
    {
      id: 'bebop-six-dominant',
      name: 'Bebop twelve-bar, VI7♭9 for all of bar 8',
      description: 'v–I into IV, ♯IV diminished, VI7♭9 into ii–V, and a full turnaround.',
      use: 'Bebop; the arpeggio of VI7♭9 up to its ninth is a commonplace of the style.',
      source: `${SOURCES.bebop} (bars 1 to 3, 5, 6, 8 to 11); bars 4 and 12: ${SOURCES.bird}; bar 7: ${SOURCES.commonPractice}`,
      bars: `| I7 | IV7 | I7 | v7 I7 |
           | IV7 | #ivdim7 | I7 | VI7b9 |
           | ii7 | V7 | I7 VI7b9 | ii7 V7 |`,
    },
    {
      id: 'jazz-tritone',
      name: 'Jazz twelve-bar with tritone substitutes',
      description:
        '♭V7 leads into IV, ♭II7 stands for V, and dominants fall by half steps to the tonic.',
      use: 'Modern jazz.',
      source: `${SOURCES.memory}; bars 11 and 12: ${SOURCES.twelveBarJazz}`,
      bars: `| I7 | IV7 | I7 | v7 bV7 |
           | IV7 | #ivdim7 | I7 | VI7 |
           | ii7 | bII7 | I7 bIII7 | II7 bII7 |`,
    },
    {
      id: 'swing-major-seventh',
      name: 'Swing twelve-bar in major sevenths',
      description:
        'A major seventh on I in bar 1; pairs of ii–V fall to IV, and by half steps from bar 6 to V.',
      use: 'Swing and bebop.',
      source: SOURCES.bird,
      bars: `| Imaj7 | viim7b5 III7 | vi7 II7 | v7 I7 |
           | IV7 | iv7 bVII7 | iii7 VI7 | biii7 bVI7 |
           | ii7 | V7 | Imaj7 VI7 | ii7 V7 |`,
    },
    {
      id: 'swing-major-seventh-simple',
      name: 'Swing twelve-bar, major sevenths on I',
      description: 'Major sevenths on I, a diminished passing chord, and ii–V for the cadence.',
      use: 'Swing ballads and vocal blues.',
      source: SOURCES.memory,
      bars: `| Imaj7 | IV7 | Imaj7 | v7 I7 |
           | IVmaj7 | #ivdim7 | Imaj7 | VI7 |
           | ii7 | V7 | Imaj7 VI7 | ii7 V7 |`,
    },
    {
      id: 'swing-sixths',
      name: 'Swing twelve-bar in sixths',
      description: 'Sixth chords on I, a minor IV in bar 6, and VI7–II7 before V.',
      use: 'Swing and jump blues.',
      source: SOURCES.memory,
      bars: `| I6 | IV7 | I6 | I7 |
           | IV7 | iv6 | I6 | VI7 |
           | II7 | V7 | I6 | V7 |`,
    },
    {
      id: 'major-seventh-plain',
      name: 'Twelve-bar in major sevenths, V–V–I–I',
      description: 'The quick change with a major seventh on I, which turns to I7 before IV.',
      use: 'First lessons in jazz.',
      source: SOURCES.coker,
      bars: `| Imaj7 | IV7 | Imaj7 | I7 |
           | IV7 | % | Imaj7 | % |
           | V7 | % | Imaj7 | % |`,
    },
    {
      id: 'major-seventh-diminished',
      name: 'Twelve-bar in major sevenths, ♯IV diminished and VI7',
      description: 'v–I into IV, ♯IV diminished in bar 6, VI7 to ii–V, and I for two bars.',
      use: 'Swing.',
      source: SOURCES.coker,
      bars: `| Imaj7 | IV7 | Imaj7 | v7 I7 |
           | IV7 | #ivdim7 | Imaj7 | VI7 |
           | ii7 | V7 | Imaj7 | % |`,
    },
    {
      id: 'major-seventh-minor-four',
      name: 'Twelve-bar in major sevenths, minor iv',
      description: 'IV with a major seventh turns to iv, then iii–VI leads to ii–V.',
      use: 'Swing and ballads.',
      source: SOURCES.coker,
      bars: `| Imaj7 | IV7 | Imaj7 | v7 I7 |
           | IVmaj7 | iv7 | iii7 | VI7 |
           | ii7 | V7 | Imaj7 | % |`,
    },
    {
      id: 'major-seventh-by-half-steps',
      name: 'Twelve-bar in major sevenths, by half steps',
      description: 'I climbs by ii and ♯II diminished to iii; iii falls by ♭iii to ii–V.',
      use: 'Bebop.',
      source: SOURCES.coker,
      bars: `| Imaj7 | ii7 #iidim7 | iii7 | v7 I7 |
           | IVmaj7 | iv7 bVII7 | iii7 | biii7 |
           | ii7 | V7 | Imaj7 | % |`,
    },
  ] as const satisfies readonly FormRow[])();

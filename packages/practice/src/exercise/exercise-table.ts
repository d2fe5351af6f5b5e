import type { ChordStep } from './chord-step.js';

/** A note of a pattern: felt beat from 0, length in beats, what it is of the chord, semitones added. */
export type PatternNote = readonly [beat: number, length: number, step: ChordStep, shift?: number];

/** An exercise as data: what it is for, and what is played over each bar of one chord. */
export interface ExerciseRow {
  readonly kind: string;
  /** What to reach, in words; a teacher can hear whether it is. */
  readonly goal: string;
  /** Bars in turn; a chord that lasts less is cut short. */
  readonly bars: readonly (readonly PatternNote[])[];
  /** Whether it is about breathing, so that the caution belongs to it. */
  readonly breath?: true;
  /** Whether each note lies in the octave nearest the one before; else all above the roots. */
  readonly near?: true;
}

/** The exercises that follow the chords of a chart. Design: ours, of the parts that teachers drill. */
export const EXERCISE_ROWS = [
  {
    kind: 'roots-in-time',
    goal: 'Land on the root of each chord on beat 1, and stop on beat 4 to breathe.',
    bars: [
      [
        [0, 2, '1'],
        [2, 1, '1'],
      ],
    ],
  },
  {
    kind: 'thirds',
    goal: 'Hear the third of each chord against its root: it tells major from minor.',
    bars: [
      [
        [0, 1, '1'],
        [1, 2, '3'],
      ],
    ],
  },
  {
    kind: 'sevenths',
    goal: 'Hear the seventh of each chord pull to the next.',
    bars: [
      [
        [0, 1, '1'],
        [1, 2, '7'],
      ],
    ],
  },
  {
    kind: 'thirds-and-sevenths',
    goal: 'Third, then seventh: hear how the seventh of a chord leads to the third of the next.',
    near: true,
    bars: [
      [
        [0, 2, '3'],
        [2, 1, '7'],
      ],
    ],
  },
  {
    kind: 'arpeggios-up',
    goal: 'Each chord from its root upwards, one tone a beat, the last one short.',
    bars: [
      [
        [0, 1, '1'],
        [1, 1, '3'],
        [2, 1, '5'],
        [3, 0.5, '7'],
      ],
    ],
  },
  {
    kind: 'arpeggios-down',
    goal: 'Each chord from its seventh downwards, one tone a beat, the last one short.',
    bars: [
      [
        [0, 1, '7'],
        [1, 1, '5'],
        [2, 1, '3'],
        [3, 0.5, '1'],
      ],
    ],
  },
  {
    kind: 'arpeggios-broken',
    goal: 'The tones of each chord out of order, in pairs of eighths.',
    bars: [
      [
        [0, 0.5, '1'],
        [0.5, 0.5, '5'],
        [1, 0.5, '3'],
        [1.5, 0.5, '7'],
        [2, 1, '5'],
      ],
    ],
  },
  {
    kind: 'chord-rhythm',
    goal: 'The chord on beats 2 and 4, short, and the other breath in the gaps: in balance, lungs half full.',
    breath: true,
    bars: [
      [
        [1, 0.5, '1'],
        [1, 0.5, '3'],
        [1, 0.5, '5'],
        [3, 0.5, '1'],
        [3, 0.5, '3'],
        [3, 0.5, '5'],
      ],
    ],
  },
  {
    kind: 'octaves',
    goal: 'Both notes of the octave as loud as each other, the tongue over the holes between.',
    breath: true,
    bars: [
      [
        [0, 1, '1'],
        [0, 1, '1', 12],
        [2, 1, '1'],
        [2, 1, '1', 12],
      ],
    ],
  },
  {
    kind: 'splits',
    goal: 'Two tones of the chord at the two corners of the mouth, both sounding at once.',
    breath: true,
    bars: [
      [
        [0, 1, '3'],
        [0, 1, '1', 12],
        [2, 1, '3'],
        [2, 1, '1', 12],
      ],
    ],
  },
  {
    kind: 'approach-notes',
    goal: 'A semitone below the third and the fifth on the beat before the tone, and into it.',
    bars: [
      [
        [0, 0.5, '3', -1],
        [0.5, 1, '3'],
        [2, 0.5, '5', -1],
        [2.5, 1, '5'],
      ],
    ],
  },
  {
    kind: 'motif',
    goal: 'One rhythm through all the changes: root, third, fifth, and home.',
    bars: [
      [
        [0, 0.5, '1'],
        [0.5, 0.5, '3'],
        [1, 1, '5'],
        [2.5, 0.5, '3'],
        [3, 0.5, '1'],
      ],
    ],
  },
  {
    kind: 'scale-run',
    goal: 'The scale of each chord up for a bar and down for a bar, in even eighths.',
    bars: [
      [
        [0, 0.5, '1'],
        [0.5, 0.5, '1', 2],
        [1, 0.5, '3'],
        [1.5, 0.5, '1', 5],
        [2, 0.5, '5'],
        [2.5, 0.5, '5', 2],
        [3, 0.5, '7'],
      ],
      [
        [0, 0.5, '7'],
        [0.5, 0.5, '5', 2],
        [1, 0.5, '5'],
        [1.5, 0.5, '1', 5],
        [2, 0.5, '3'],
        [2.5, 0.5, '1', 2],
        [3, 0.5, '1'],
      ],
    ],
  },
  {
    kind: 'pattern-run',
    goal: 'Three notes of the scale from each of its steps: 1 2 3, 3 4 5.',
    bars: [
      [
        [0, 0.5, '1'],
        [0.5, 0.5, '1', 2],
        [1, 1, '3'],
        [2, 0.5, '3'],
        [2.5, 0.5, '1', 5],
        [3, 0.5, '5'],
      ],
    ],
  },
  {
    kind: 'breath-balance',
    goal: 'Two beats of tone and two of quiet breath the other way; end each bar with the lungs as they began.',
    breath: true,
    bars: [[[0, 2, '5']], [[0, 2, '1']]],
  },
] as const satisfies readonly ExerciseRow[];

/** Kinds of exercise that follow the chords. */
export type ExerciseKind = (typeof EXERCISE_ROWS)[number]['kind'] | 'bend-drill';

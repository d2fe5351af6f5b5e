import { makePlayer, type Player } from '@reedplate/layout';
import { deepFreeze } from '@reedplate/pitch';
import type { PhraseGrade } from '../phrase/phrase.js';

/** What a grade asks of a player at most. Our judgement, after the order in which bends are taught. */
export interface GradeLimits {
  readonly grade: PhraseGrade;
  readonly name: string;
  /** What must be had: soundings and splits. */
  readonly player: Player;
  /** Farthest move from one moment to the next, in holes, of the nearest holes of both. */
  readonly mostHoles: number;
  /** Most notes that begin within a felt beat, graces left out. */
  readonly mostInBeat: number;
  /** Most choruses or bars without a rest of half a beat. */
  readonly mostBarsToRest: number;
}

const NATURAL = ['natural'] as const;
const FIRST_BENDS = [
  ...NATURAL,
  { technique: 'bend', breath: 'draw', holes: [1, 4, 6], depths: [1] },
] as const;
const DRAW_BENDS = [...NATURAL, { technique: 'bend', breath: 'draw' }] as const;
const ALL = ['natural', 'bend', 'valved-bend', 'overblow', 'overdraw'] as const;

/**
 * The grades of phrases.
 *
 * @example
 * ```ts
 * import { PHRASE_GRADES } from '@reedplate/practice';
 *
 * PHRASE_GRADES.map(({ grade, mostHoles }) => `${grade}: ${mostHoles}`); // => ['1: 2', '2: 3', '3: 3', '4: 4', '5: 5']
 * ```
 */
export const PHRASE_GRADES: readonly GradeLimits[] = /* @__PURE__ */ (() =>
  deepFreeze([
    {
      grade: 1,
      name: 'first lessons: unbent notes, small moves, two notes to a beat',
      player: makePlayer([...NATURAL], { id: 'grade-1', splits: [] }),
      mostHoles: 2,
      mostInBeat: 2,
      mostBarsToRest: 2,
    },
    {
      grade: 2,
      name: 'unbent notes, triplets, moves of three holes',
      player: makePlayer([...NATURAL], { id: 'grade-2', splits: [] }),
      mostHoles: 3,
      mostInBeat: 3,
      mostBarsToRest: 3,
    },
    {
      grade: 3,
      name: 'the first bends: a semitone on 1, 4 and 6 draw',
      player: makePlayer([...FIRST_BENDS], { id: 'grade-3', splits: [3] }),
      mostHoles: 3,
      mostInBeat: 3,
      mostBarsToRest: 3,
    },
    {
      grade: 4,
      name: 'all draw bends, octaves, four notes to a beat',
      player: makePlayer([...DRAW_BENDS], { id: 'grade-4' }),
      mostHoles: 4,
      mostInBeat: 4,
      mostBarsToRest: 4,
    },
    {
      grade: 5,
      name: 'everything',
      player: makePlayer([...ALL], { id: 'grade-5' }),
      mostHoles: 5,
      mostInBeat: 6,
      mostBarsToRest: 6,
    },
  ]))();

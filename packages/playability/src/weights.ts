/**
 * Where a weight comes from: a publication, what teachers commonly say, or an assumption of ours
 * that a study may vary.
 */
export type EffortWeightGround = 'published' | 'common practice' | 'assumption';

/** Unit of a weight. A point is the effort of moving to the next hole at leisure. */
export type EffortWeightUnit =
  | 'points'
  | 'points per hole'
  | 'points per semitone'
  | 'points per second'
  | 'seconds'
  | 'seconds per bit'
  | 'seconds per second'
  | 'holes';

/** What one weight of an effort model means. */
export interface EffortWeightInfo {
  readonly id: EffortWeightId;
  readonly unit: EffortWeightUnit;
  readonly meaning: string;
  /** What the weight's being there, and its order against others, rests on; figures are ours. */
  readonly ground: EffortWeightGround;
  /** The publication, the practice, or why it is assumed. */
  readonly source: string;
}

const ROWS = [
  {
    id: 'reach',
    unit: 'points per hole',
    meaning: 'moving the mouth along the harp',
    ground: 'common practice',
    source: 'adjacent holes are easiest; no measured harmonica data',
  },
  {
    id: 'farReach',
    unit: 'points per hole',
    meaning: 'each hole of a move beyond the third, added to reach',
    ground: 'common practice',
    source: 'skips of three (an octave) are practised, larger ones are rare',
  },
  {
    id: 'breathChange',
    unit: 'points',
    meaning: 'turning from blow to draw or back',
    ground: 'common practice',
    source: 'breath moves are one of the two coordinates of De Souza 2017, ch. 4 (abstract)',
  },
  {
    id: 'repeat',
    unit: 'points',
    meaning: 'sounding the same holes again, which must be articulated',
    ground: 'assumption',
    source: 'a tongue or throat stroke is needed where a change of hole needs none',
  },
  {
    id: 'bend',
    unit: 'points',
    meaning: 'a bend of one semitone',
    ground: 'common practice',
    source: 'bends are taught after single unbent notes',
  },
  {
    id: 'bendDepth',
    unit: 'points per semitone',
    meaning: 'each semitone of a bend beyond the first',
    ground: 'common practice',
    source: 'deeper bends are taught later',
  },
  {
    id: 'bendHole',
    unit: 'points',
    meaning: 'a bend on the hardest hole, over one on the easiest; by the rank of the hole',
    ground: 'common practice',
    source: 'draw bends are learned on 4, then 6, 1, 2, 3',
  },
  {
    id: 'blowBend',
    unit: 'points',
    meaning: 'a blow bend over a draw bend',
    ground: 'common practice',
    source: 'blow bends are taught after draw bends',
  },
  {
    id: 'valvedBend',
    unit: 'points',
    meaning: 'a valved bend of one semitone',
    ground: 'assumption',
    source: 'one reed bends by itself; no syllabus places it',
  },
  {
    id: 'overblow',
    unit: 'points',
    meaning: 'an overblow',
    ground: 'common practice',
    source: 'overblows are taught after all bends',
  },
  {
    id: 'overdraw',
    unit: 'points',
    meaning: 'an overdraw',
    ground: 'common practice',
    source: 'overdraws are taught last',
  },
  {
    id: 'overbendHole',
    unit: 'points',
    meaning: 'an overbend on the hardest hole, over one on the easiest; by the rank of the hole',
    ground: 'common practice',
    source: 'overblows are learned on 6, 5, 4 before 1; those on 2 and 3 are hardly used',
  },
  {
    id: 'bendHold',
    unit: 'points per second',
    meaning: 'holding a bend or an overbend at its pitch',
    ground: 'assumption',
    source: 'a bent pitch is free between the two reeds (Bahnson, Antaki and Beery 1998, abstract)',
  },
  {
    id: 'bendAttack',
    unit: 'points',
    meaning: 'hitting a bend or an overbend straight on',
    ground: 'common practice',
    source: 'teaching advice: hitting a bend straight on is harder than sliding into it',
  },
  {
    id: 'bendSlide',
    unit: 'points',
    meaning: 'sliding into a bend from another note of the same hole and breath',
    ground: 'common practice',
    source: 'teaching advice: slide from the clean note',
  },
  {
    id: 'bendRelease',
    unit: 'points',
    meaning: 'leaving a bend or an overbend for an unbent note or another hole or breath',
    ground: 'assumption',
    source: 'the mouth must return to its shape',
  },
  {
    id: 'hurry',
    unit: 'points',
    meaning: 'a move that needs twice the time there is; in proportion to the time lacking',
    ground: 'assumption',
    source: 'time from onset to onset, against the three times below',
  },
  {
    id: 'moveTime',
    unit: 'seconds per bit',
    meaning: 'time of a move of d holes, per bit of log2(1 + d)',
    ground: 'published',
    source:
      "the shape, log2(1 + distance / width), is MacKenzie's of Fitts's law (J. Motor Behavior 21, 1989, eq. 5); the width is one hole, the figure ours",
  },
  {
    id: 'turnTime',
    unit: 'seconds',
    meaning: 'time of a breath change',
    ground: 'assumption',
    source: 'no measured harmonica data',
  },
  {
    id: 'bendTime',
    unit: 'seconds',
    meaning: 'time to shape the mouth for a bend or an overbend',
    ground: 'assumption',
    source: 'no measured harmonica data',
  },
  {
    id: 'chordHole',
    unit: 'points per hole',
    meaning: 'each hole beyond the first that sounds at once',
    ground: 'assumption',
    source: 'a wider mouth; chords are often easier than single notes for a beginner',
  },
  {
    id: 'split',
    unit: 'points',
    meaning: 'each stretch of holes that is blocked between sounding ones',
    ground: 'common practice',
    source: 'splits are practised as tongue blocks; the figure is ours',
  },
  {
    id: 'airStrain',
    unit: 'points per second',
    meaning: 'breath taken past the comfort limit',
    ground: 'common practice',
    source: 'long one-way passages run out of air or fill up; no source gives figures',
  },
  {
    id: 'airSnatch',
    unit: 'points per second',
    meaning: 'breath past the capacity, which must be snatched between notes',
    ground: 'assumption',
    source: 'at the limit the player cheats a breath instead of stopping',
  },
  {
    id: 'comfort',
    unit: 'seconds',
    meaning: 'single-note playing on one breath, from lungs half full, that is comfortable',
    ground: 'assumption',
    source: 'no source gives airflow per note; vary it',
  },
  {
    id: 'capacity',
    unit: 'seconds',
    meaning: 'single-note playing on one breath, from lungs half full, that is possible',
    ground: 'assumption',
    source: 'no source gives airflow per note; vary it',
  },
  {
    id: 'recovery',
    unit: 'seconds per second',
    meaning: 'breath brought back towards half full in a second of rest',
    ground: 'common practice',
    source: 'the remedy for running out is to rest and breathe; the figure is ours',
  },
  {
    id: 'chordAir',
    unit: 'holes',
    meaning: 'air that each further hole of a chord takes, as a share of the first',
    ground: 'assumption',
    source: 'players let less air through each hole of a chord',
  },
] as const;

/** Name of a weight of an effort model; see {@link EFFORT_WEIGHTS}. */
export type EffortWeightId = (typeof ROWS)[number]['id'];

/**
 * Every weight that an effort model sets, with its unit, its meaning and its ground. The figures
 * themselves are in the models: no publication gives weights for the harmonica.
 *
 * @example
 * ```ts
 * import { EFFORT_WEIGHTS } from '@reedplate/playability';
 *
 * EFFORT_WEIGHTS.find(({ id }) => id === 'bendAttack')?.ground; // => 'common practice'
 * ```
 */
export const EFFORT_WEIGHTS: readonly EffortWeightInfo[] = Object.freeze(
  ROWS.map((row) => Object.freeze(row)),
);

/** The names of the weights, in the order of {@link EFFORT_WEIGHTS}. */
export const EFFORT_WEIGHT_IDS: readonly EffortWeightId[] = Object.freeze(ROWS.map(({ id }) => id));

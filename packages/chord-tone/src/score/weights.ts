import type { NoteClass } from './note-class.js';

/** Shares that the measures have in the total, each from 0 up; they need not add up to 1. */
export interface ScoreMeasureWeights {
  readonly fit: number;
  readonly landing: number;
  readonly coverage: number;
  readonly chordToneShare: number;
  readonly guideToneShare: number;
  readonly resolution: number;
  readonly timing: number;
}

/** A point of the calibration: a weighted mean of measures and the total it gives. */
export interface CalibrationPoint {
  /** Mostly 0 to 1: taking chance off may lead a little beyond. */
  readonly raw: number;
  /** 0 to 100, unless a scale of your own is wanted. */
  readonly total: number;
}

/** Everything a score weighs with: replace any part through the option `weights`. */
export interface ScoreWeights {
  /** What a note of each class is worth, 0 to 1. */
  readonly credit: Readonly<Record<NoteClass, number>>;
  /** What a note that resolves is worth at least, whatever its class, 0 to 1. */
  readonly resolvedCredit: number;
  /** What each class is worth as the note that sounds at a change, 0 to 1. */
  readonly landing: Readonly<Record<NoteClass, number>>;
  /**
   * Weight of striking a note, in felt beats, added to its duration; also the length from which an
   * unresolved rough note is a clash.
   */
  readonly struck: number;
  /** Longest time from a note to the chord tone it resolves to, in felt beats. */
  readonly resolveWithin: number;
  /** How long before a change a note may belong to the coming chord, in felt beats, 0 to 1. */
  readonly pushWithin: number;
  /** How late the note that sounds at a change may begin, in felt beats. */
  readonly landWithin: number;
  /**
   * Share of the bars of the chart in which something must be played for the total to count in
   * full, 0 to 1; where less is played it counts in proportion.
   */
  readonly enoughPlayed: number;
  readonly measures: ScoreMeasureWeights;
  /** How much of the line's own chance level is taken off, 0 to 1. */
  readonly chanceShare: number;
  /** The fit that shuffled solos reach: what a line's own chance level is compared with. */
  readonly typicalChance: number;
  /** At least one point, `raw` rising, `total` never falling; straight lines between, level beyond. */
  readonly calibration: readonly CalibrationPoint[];
}

/**
 * The default weights.
 *
 * Ground: the classes and their order are the trade's (chord tones on the changes, blue notes as
 * style, resolved non-chord tones as music: common practice, no source). The figures were chosen
 * on one half of a set of annotated blues solos and checked on the other half, which
 * `docs/scoring-validity.md` names and reports; they differ little from each other within the
 * noise of twenty solos, so the simplest were kept.
 */
export const SCORE_WEIGHTS: ScoreWeights = Object.freeze({
  credit: Object.freeze({
    root: 1,
    'guide-tone': 1,
    'chord-tone': 1,
    blue: 0.4,
    passing: 0.7,
    neighbour: 0.7,
    approach: 0.7,
    colour: 0.4,
    unresolved: 0,
    clash: 0,
    unjudged: 0,
  }),
  resolvedCredit: 0.7,
  landing: Object.freeze({
    root: 1,
    'guide-tone': 1,
    'chord-tone': 0.8,
    blue: 0.6,
    passing: 0.5,
    neighbour: 0.5,
    approach: 0.5,
    colour: 0.4,
    unresolved: 0,
    clash: 0,
    unjudged: 0,
  }),
  struck: 0.5,
  resolveWithin: 1,
  pushWithin: 0.5,
  landWithin: 1,
  // Call and response leaves every other bar or pair of bars free. Design choice, no source.
  enoughPlayed: 0.5,
  measures: Object.freeze({
    fit: 0.95,
    landing: 0,
    coverage: 0.05,
    chordToneShare: 0,
    guideToneShare: 0,
    resolution: 0,
    timing: 0,
  }),
  chanceShare: 0.1,
  typicalChance: 0.61,
  calibration: Object.freeze([
    Object.freeze({ raw: 0.5, total: 0 }),
    Object.freeze({ raw: 0.61, total: 40 }),
    Object.freeze({ raw: 0.74, total: 80 }),
    Object.freeze({ raw: 0.95, total: 100 }),
  ]),
});

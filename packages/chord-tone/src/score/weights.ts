import type { NoteClass } from './note-class.js';
import type { ReadingKind } from './readings.js';

/** A point of the calibration: what chord fit and following make together, and the total it gives. */
export interface CalibrationPoint {
  /** 0 to 1. */
  readonly raw: number;
  /** 0 to 100, unless a scale of your own is wanted. */
  readonly total: number;
}

/** Everything a score weighs with: replace any part through the option `weights`. */
export interface ScoreWeights {
  /** What a note of each class is worth, 0 to 1. */
  readonly credit: Readonly<Record<NoteClass, number>>;
  /** What a note that resolves is worth at least, whatever its class but `leaning`, 0 to 1. */
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
   * How much must be played for blind playing to count as much as shuffled notes in what chance
   * reaches, in felt beats of weight: of less it counts less, for a short line may fit any chord by luck.
   * A chorus that is played again note by note counts once.
   */
  readonly blindFrom: number;
  /** What following counts in the total, 0 to 1; the rest is for chord fit. */
  readonly followingShare: number;
  /** What is taken off where another reading explains all that was lost, by its kind, 0 to 1. */
  readonly faults: Readonly<Record<ReadingKind, number>>;
  /** What a reading must explain of what was lost before anything is taken off, 0 to 1. */
  readonly faultsFrom: number;
  /** What silence takes off, as a multiple of the share of bars that are silent. */
  readonly silence: number;
  /** How far onsets may lie from the grid on average at no cost, in felt beats. */
  readonly looseFree: number;
  /** What each beat beyond that takes off, as a share of the total. */
  readonly looseCost: number;
  /** At least one point, `raw` rising, `total` never falling; straight lines between, level beyond. */
  readonly calibration: readonly CalibrationPoint[];
}

/**
 * The default weights.
 *
 * Ground: the classes and their order are the trade's (chord tones on the changes, blue notes as
 * style, resolved non-chord tones as music: common practice, no source). The figures were chosen
 * on one half of a set of annotated blues solos and of made takes, and checked on the other half:
 * `docs/scoring-validity.md` names and reports them.
 */
export const SCORE_WEIGHTS: ScoreWeights = Object.freeze({
  credit: Object.freeze({
    root: 1,
    'guide-tone': 1,
    'chord-tone': 1,
    idiom: 0.8,
    blue: 0.5,
    passing: 0.6,
    neighbour: 0.6,
    approach: 0.6,
    leaning: 0.5,
    colour: 0.5,
    unresolved: 0,
    clash: 0,
    unjudged: 0,
  }),
  resolvedCredit: 0.6,
  landing: Object.freeze({
    root: 1,
    'guide-tone': 1,
    'chord-tone': 0.8,
    idiom: 0.6,
    blue: 0.6,
    passing: 0.5,
    neighbour: 0.5,
    approach: 0.5,
    leaning: 0.5,
    colour: 0.4,
    unresolved: 0,
    clash: 0,
    unjudged: 0,
  }),
  struck: 0.5,
  resolveWithin: 1,
  pushWithin: 0.5,
  landWithin: 1,
  blindFrom: 600,
  followingShare: 0.53,
  faults: Object.freeze({
    'other-harp': 1,
    'bars-off': 0.75,
    'beats-off': 0.15,
    'one-chord': 0.65,
    'chord-missed': 0,
  }),
  faultsFrom: 0,
  silence: 1.2,
  looseFree: 0.025,
  looseCost: 1.8,
  calibration: Object.freeze([
    Object.freeze({ raw: 0.3, total: 0 }),
    Object.freeze({ raw: 0.365, total: 22 }),
    Object.freeze({ raw: 0.48, total: 69 }),
    Object.freeze({ raw: 0.72, total: 79 }),
    Object.freeze({ raw: 1, total: 100 }),
  ]),
});

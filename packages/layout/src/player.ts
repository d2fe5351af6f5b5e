import type { Breath, Hole, Technique } from './sounding.js';

/** Soundings that a player has: of one technique, on all holes or on some. */
export interface PlayerSkill {
  readonly technique: Technique;
  /** Default both. */
  readonly breath?: Breath;
  /**
   * Default all.
   * @minItems 1
   */
  readonly holes?: readonly Hole[];
  /**
   * How many semitones a bend goes down, each one apart; default all that the reeds give.
   * @minItems 1
   */
  readonly depths?: readonly number[];
}

/** Holes from the first to the last of a split, the blocked ones counted in. */
export type SplitWidth = 3 | 4 | 5;

/** What someone can play, as data: what every `level` is a short word for. */
export interface Player {
  /** Lower-case words with hyphens. */
  readonly id: string;
  readonly name: string;
  /** A sounding is had where one of these covers it. */
  readonly skills: readonly PlayerSkill[];
  /** Widths of the splits that the tongue can block. */
  readonly splits: readonly SplitWidth[];
  /**
   * Whether 2 draw is held unbent and steady. Who does not yet hold it takes 3 blow where that is the
   * same pitch.
   */
  readonly holdsTwoDraw: boolean;
  /** Id of the effort model that suits, where one is meant. */
  readonly model?: string;
}

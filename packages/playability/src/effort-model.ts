import type { TechniqueLevel } from '@reedplate/layout';
import type { EffortWeightId } from './weights.js';

/** A figure for every weight, each from 0 up, in the unit that `EFFORT_WEIGHTS` states. */
export type EffortWeights = { readonly [Weight in EffortWeightId]: number };

/**
 * How hard each hole is to bend on, from 0 (learned first) to 1 (learned last), from hole 1 up; a
 * hole past the end ranks as the last one listed.
 */
export interface HoleRanks {
  /** @minItems 1 */
  readonly drawBend: readonly number[];
  /** @minItems 1 */
  readonly blowBend: readonly number[];
  /** Overblows and overdraws. @minItems 1 */
  readonly overbend: readonly number[];
}

/** What playing costs one kind of player: all assumptions of a result, as data. */
export interface EffortModel {
  /** Lower-case words with hyphens. @pattern ^[a-z0-9]+(-[a-z0-9]+)*$ */
  readonly id: string;
  readonly name: string;
  /** Whom it stands for. */
  readonly use: string;
  /** What such a player can do, as a word; a path goes by its own `level`. */
  readonly level: TechniqueLevel;
  readonly weights: EffortWeights;
  readonly holeRanks: HoleRanks;
}

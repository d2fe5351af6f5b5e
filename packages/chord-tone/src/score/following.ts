import { blindFit, shuffledFit } from './chance.js';
import type { ScoringGrid } from './grid.js';
import type { Judged } from './judge.js';
import type { ScoreWeights } from './weights.js';

/** How far a line follows the changes beyond chance, and the two kinds of chance. */
export interface Following {
  /** The chord fit that the same notes would have on average in any other order, 0 to 1. */
  readonly shuffled: number;
  /**
   * The chord fit that the same line would have over each chord of the chart held throughout, averaged by
   * the time each has, 0 to 1: what playing that hears no change reaches.
   */
  readonly blind: number;
  /** Both together, by their shares. */
  readonly chance: number;
  /** Share of what chance leaves that the line reaches: 1 all, 0 no more than chance. */
  readonly above: number;
}

/**
 * Measures following. Null where there is nothing to follow, one chord throughout, or nothing to
 * judge.
 */
export function followingOf(
  judged: readonly Judged[],
  chordFit: number | null,
  grid: ScoringGrid,
  weights: ScoreWeights,
  fitOver: (grid: ScoringGrid) => number | null,
): Following | null {
  if (chordFit === null || grid.tables.length < 2) return null;
  const shuffled = shuffledFit(judged, grid, weights) ?? chordFit;
  const blind = blindFit(grid, fitOver) ?? chordFit;
  const { shuffledShare } = weights;
  const chance = shuffledShare * shuffled + (1 - shuffledShare) * blind;
  const above = chance >= 1 ? 0 : Math.max(0, (chordFit - chance) / (1 - chance));
  return Object.freeze({ shuffled, blind, chance, above });
}

import { blindFit, type FitsOn, shuffledFit } from './chance.js';
import type { Change, ScoringGrid } from './grid.js';
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
  /** Both together: the more is played, the more counts what is blind. */
  readonly chance: number;
  /** Share of what chance leaves that the line reaches: 1 all, 0 no more than chance. */
  readonly above: number;
}

/**
 * Measures following. Null where there is nothing to follow, one chord throughout, or nothing to
 * judge.
 *
 * Of a short line little is known: by luck it fits the chords better where they are than elsewhere, or
 * worse. So it is measured first against its own notes in any order, and the more is played the more
 * against playing that hears no change.
 */
export function followingOf(
  judged: readonly Judged[],
  chordFit: number | null,
  grid: ScoringGrid,
  weights: ScoreWeights,
  fitsOn: FitsOn,
): Following | null {
  if (chordFit === null || grid.tables.length < 2) return null;
  const shuffled = shuffledFit(judged, grid, weights) ?? chordFit;
  const blind = blindFit(grid, fitsOn) ?? chordFit;
  const evidence = evidenceOf(judged, grid);
  const blindShare = evidence / (evidence + weights.blindFrom);
  const chance = (1 - blindShare) * shuffled + blindShare * blind;
  const above = chance >= 1 ? 0 : Math.max(0, (chordFit - chance) / (1 - chance));
  return Object.freeze({ shuffled, blind, chance, above });
}

/**
 * How much there is to judge by, in felt beats of weight. A chorus that is played again note by note tells
 * nothing new: each place of the form counts once for the same note.
 */
function evidenceOf(judged: readonly Judged[], { changes }: ScoringGrid): number {
  const begins = new Map<number, number>();
  for (const { chorus, start } of changes) if (!begins.has(chorus)) begins.set(chorus, start);
  const known = new Set<string>();
  let sum = 0;
  for (const { part, weight } of judged) {
    const { chorus } = changes[part.clock] as Change;
    const place = part.start - (begins.get(chorus) as number);
    const heard = `${place} ${part.end - part.start} ${part.note.pitch}`;
    if (!known.has(heard)) sum += weight;
    known.add(heard);
  }
  return sum;
}

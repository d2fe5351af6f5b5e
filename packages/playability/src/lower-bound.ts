import { itemAt } from '@reedplate/pitch';
import type { Board, LaidOut } from './board.js';
import type { LineTimes } from './line-times.js';

/** What is known of a line on a harp without a search. */
export interface Bound {
  /** Events that cannot be sounded. */
  readonly missing: number;
  /** Thousandths that no way through the rest costs less than. */
  readonly bound: number;
}

/**
 * Bounds for a line: the least that each set of pitches costs by itself, and each pair of
 * neighbours in moving. Holding, hurry and air only add to it. Where events are left out, their
 * neighbours are unknown and only the first part counts.
 */
export function lowerBound(times: LineTimes): (laidOut: LaidOut) => Bound {
  const pairs = countPairs(times);
  return ({ board, ways }) => {
    let missing = 0;
    let bound = 0;
    for (const [set, count] of times.setCounts.entries()) {
      const choices = itemAt(ways, set);
      if (choices.length === 0) missing += count;
      else bound += count * leastStill(board, choices);
    }
    if (missing > 0) return { missing, bound };
    for (const { from, to, count } of pairs) {
      bound += count * leastMove(board, itemAt(ways, from), itemAt(ways, to));
    }
    return { missing, bound };
  };
}

interface Pair {
  readonly from: number;
  readonly to: number;
  readonly count: number;
}

function countPairs({ set, sets, count }: LineTimes): readonly Pair[] {
  const counts = new Map<number, number>();
  for (let event = 1; event < count; event += 1) {
    const pair = itemAt(set, event - 1) * sets.length + itemAt(set, event);
    counts.set(pair, (counts.get(pair) ?? 0) + 1);
  }
  return [...counts].map(([pair, times]) => {
    return { from: Math.floor(pair / sets.length), to: pair % sets.length, count: times };
  });
}

function leastStill({ still }: Board, choices: readonly number[]): number {
  let least = Infinity;
  for (const choice of choices) least = Math.min(least, itemAt(still, choice));
  return least;
}

function leastMove(
  { move, choices }: Board,
  from: readonly number[],
  to: readonly number[],
): number {
  let least = Infinity;
  for (const row of from) {
    for (const column of to) {
      least = Math.min(least, itemAt(move, row * choices.length + column));
    }
  }
  return least;
}

/** A source of chance: numbers from 0 to below 1, in 32 bits. */
export type Random = () => number;

const STEP = 0x6d2b79f5;
const WORD = 2 ** 32;

/** Chance from a seed: the same numbers on every runtime, by whole numbers alone. */
export function randomFrom(seed: number): Random {
  let state = seed | 0;
  return () => {
    state = (state + STEP) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / WORD;
  };
}

/** An index, each with the chance of its weight; the weights are not all 0. */
export function drawIndex(weights: readonly number[], random: Random): number {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  let left = random() * total;
  let last = 0;
  for (const [index, weight] of weights.entries()) {
    if (weight <= 0) continue;
    last = index;
    left -= weight;
    if (left < 0) return index;
  }
  // Only rounding comes here.
  return last;
}

import type { Random } from '@reedplate/pitch';

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

/**
 * How often a good player's line of so many judged notes outscores its own shuffle: a fit to the
 * training half of the solos that `docs/scoring-validity.md` names, by windows of two bars to the
 * whole solo. 1 − ½·exp(−notes / scale) rises from a toss of a coin to certainty.
 */
const SCALE = 40;

/** Confidence in a total that rests on so many notes: 0.5 to 1. */
export function confidenceOf(notes: number): number {
  return 1 - 0.5 * Math.exp(-notes / SCALE);
}

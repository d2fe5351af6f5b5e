import { powerOfTwo } from '@reedplate/pitch';

/**
 * Evidence that one note gives, in standard deviations: notes add up as the square root of their
 * number, so a line of n notes is sure to Φ(0.13 √n). Chosen on windows of one bar to twelve
 * of the choosing half of the solos that `docs/scoring-validity.md` names.
 */
const EVIDENCE_PER_NOTE = 0.13;

/**
 * How often a good player's line of so many judged notes outscores its own shuffle: 0.5 to 1. Over one
 * chord it is a toss of a coin: there is nothing to follow.
 */
export function confidenceOf(notes: number, chords: number): number {
  if (notes === 0 || chords < 2) return 0.5;
  return normalDistribution(EVIDENCE_PER_NOTE * Math.sqrt(notes));
}

/**
 * Share of a normal distribution below z (from 0 up), within 1e-7: Abramowitz and Stegun (1964),
 * formula 7.1.26, value from memory.
 */
function normalDistribution(z: number): number {
  const t = 1 / (1 + (0.3275911 * z) / Math.SQRT2);
  const series =
    t *
    (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  return 1 - 0.5 * series * powerOfTwo((-z * z * Math.LOG2E) / 2);
}

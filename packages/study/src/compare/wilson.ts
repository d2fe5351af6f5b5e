/** Quantile 0.975 of the normal distribution: 95 % lie within so many standard errors on both sides. */
const Z = 1.959963984540054;

/**
 * The 95 % interval of a share by Wilson's score: it stays within 0 and 1, and is no point where none or all
 * were found. Wilson (1927), J. Am. Stat. Assoc. 22(158), 209-212.
 *
 * @param found how many of `count`; `count` from 1
 */
export function wilsonInterval(found: number, count: number): readonly [low: number, high: number] {
  const share = found / count;
  const squared = (Z * Z) / count;
  const centre = (share + squared / 2) / (1 + squared);
  const half = (Z / (1 + squared)) * Math.sqrt((share * (1 - share) + squared / 4) / count);
  return [Math.max(0, centre - half), Math.min(1, centre + half)];
}

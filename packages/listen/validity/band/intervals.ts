/** A share of some tries with its interval of 95 % (Wilson, J. Am. Stat. Assoc. 22, 1927, eq. for a proportion). */
export function wilson(
  right: number,
  tries: number,
): readonly [share: number, low: number, high: number] {
  const z = 1.96;
  const share = right / tries;
  const middle = (share + (z * z) / (2 * tries)) / (1 + (z * z) / tries);
  const half =
    (z / (1 + (z * z) / tries)) *
    Math.sqrt((share * (1 - share)) / tries + (z * z) / (4 * tries * tries));
  return [share, Math.max(0, middle - half), Math.min(1, middle + half)];
}

/** `93 (88-96)`, in per cent. */
export function sayShare(right: number, tries: number): string {
  const [share, low, high] = wilson(right, tries).map((part) => Math.round(100 * part));
  return `${share} (${low}-${high})`;
}

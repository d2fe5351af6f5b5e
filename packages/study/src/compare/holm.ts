/**
 * Probabilities of several tests, corrected so that the chance of any false alarm among them stays what each
 * alone had: sorted, the smallest times how many there are, the next times one less, and none below one before it.
 * Holm (1979), Scand. J. Stat. 6(2), 65-70.
 *
 * @returns in the order given, each at most 1
 */
export function holmAdjusted(probabilities: readonly number[]): readonly number[] {
  const order = [...probabilities.keys()].sort(
    (a, b) => (probabilities[a] as number) - (probabilities[b] as number),
  );
  const adjusted = new Array<number>(probabilities.length);
  let before = 0;
  for (const [rank, at] of order.entries()) {
    const times = (probabilities.length - rank) * (probabilities[at] as number);
    before = Math.min(1, Math.max(before, times));
    adjusted[at] = before;
  }
  return adjusted;
}

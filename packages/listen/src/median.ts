/** The middle one of some values, the upper of two; undefined for none. */
export function median(values: readonly number[]): number | undefined {
  return [...values].sort((a, b) => a - b)[values.length >> 1];
}

/** A number of a list by its place, which must lie within it. */
export function numberAt(numbers: ArrayLike<number>, at: number): number {
  return numbers[at] as number;
}

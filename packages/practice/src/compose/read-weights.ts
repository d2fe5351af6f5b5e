/** What is learned from melodies: see `MelodyModel`. */
export interface LearnedWeights {
  readonly transitions: readonly (readonly number[])[];
  readonly leaps: readonly number[];
}

const numbersOf = (row: string): readonly number[] => Object.freeze(row.split(' ').map(Number));

/** Weights from a table of numbers, a line for each degree, and a row of leaps. */
export function readWeights(table: string, leaps: string): LearnedWeights {
  const transitions = Object.freeze(table.trim().split('\n').map(numbersOf));
  return Object.freeze({ transitions, leaps: numbersOf(leaps) });
}

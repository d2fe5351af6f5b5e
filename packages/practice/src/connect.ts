import { itemAt } from '@reedplate/pitch';
/** Cost of moving from one choice to the next; a whole number from 0 keeps sums exact. */
export type MoveCost<Choice> = (from: Choice, to: Choice) => number;

interface Reached {
  readonly cost: number;
  readonly from: number;
}

/**
 * The cheapest way through columns of choices, one choice from each: exact, by dynamic
 * programming. Of equal ways it takes the one whose last choice, then last but one, and so on,
 * stands first in its column.
 *
 * @param columns each with at least one choice
 * @param startCost cost of beginning on a choice
 */
export function cheapestPath<Choice>(
  columns: readonly (readonly Choice[])[],
  startCost: (choice: Choice) => number,
  moveCost: MoveCost<Choice>,
): readonly Choice[] {
  const steps: (readonly Reached[])[] = [];
  columns.forEach((column, index) => {
    const before = columns[index - 1] ?? [];
    const reached = steps[index - 1] ?? [];
    steps.push(
      column.map((choice) =>
        index === 0
          ? { cost: startCost(choice), from: -1 }
          : cheapestArrival(before, reached, (from) => moveCost(from, choice)),
      ),
    );
  });
  return traceBack(columns, steps);
}

function cheapestArrival<Choice>(
  before: readonly Choice[],
  reached: readonly Reached[],
  costFrom: (from: Choice) => number,
): Reached {
  let best: Reached = { cost: Number.POSITIVE_INFINITY, from: -1 };
  before.forEach((from, index) => {
    const cost = itemAt(reached, index).cost + costFrom(from);
    if (cost < best.cost) best = { cost, from: index };
  });
  return best;
}

function traceBack<Choice>(
  columns: readonly (readonly Choice[])[],
  steps: readonly (readonly Reached[])[],
): readonly Choice[] {
  const path: Choice[] = [];
  const last = steps.at(-1) ?? [];
  let at = last.findIndex(({ cost }) => cost === Math.min(...last.map((step) => step.cost)));
  for (let index = columns.length - 1; index >= 0; index -= 1) {
    path.unshift(itemAt(itemAt(columns, index), at));
    at = itemAt(itemAt(steps, index), at).from;
  }
  return path;
}

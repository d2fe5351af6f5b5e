import { type Limits, type Problem, waysAt } from './problem.js';
import { airAfterStep, stageOf, stepCost } from './stage.js';
import type { Way } from './way.js';

/** A way as far as an event. */
interface Reached {
  readonly cost: number;
  readonly air: number;
  readonly choice: number;
  readonly before: Reached | undefined;
  /** Place in the order of ties among the ways to the same event. */
  readonly order: number;
}

const beginning = ({ board }: Problem): Reached => {
  return { cost: 0, air: 0, choice: board.choices.length, before: undefined, order: 0 };
};

/**
 * The `count` cheapest ways through a line, exact, the cheapest first and ties as in
 * `cheapestWay`; fewer where there are no more. For each state as many ways are kept: what comes
 * after depends on the state alone, so no other can be among the cheapest in the end.
 */
export function cheapestWays(problem: Problem, count: number, limits: Limits = {}): readonly Way[] {
  let ways: readonly Reached[] = [beginning(problem)];
  for (let event = 0; event < problem.times.count; event += 1) {
    const before = ways;
    ways = waysAt(problem, event, limits)
      .flatMap((choice) => arrivals(problem, event, choice, before, count, limits))
      .map((way, order) => ({ ...way, order }));
  }
  return [...ways].sort(inOrder).slice(0, count).map(wayTo);
}

function arrivals(
  problem: Problem,
  event: number,
  choice: number,
  ways: readonly Reached[],
  count: number,
  { ceiling = Infinity }: Limits,
): readonly Reached[] {
  const stage = stageOf(problem, event, choice);
  const byAir = new Map<number, Reached[]>();
  for (const before of ways) {
    const step = stepCost(stage, before.choice, before.air);
    if (step > ceiling) continue;
    const air = airAfterStep(stage, before.air);
    const way = { cost: before.cost + step, air, choice, before, order: before.order };
    const alike = byAir.get(air);
    if (alike === undefined) byAir.set(air, [way]);
    else alike.push(way);
  }
  return [...byAir.values()]
    .flatMap((alike) => alike.sort(inOrder).slice(0, count))
    .sort((a, b) => a.order - b.order);
}

const inOrder = (a: Reached, b: Reached): number => a.cost - b.cost || a.order - b.order;

function wayTo(last: Reached): Way {
  const choices: number[] = [];
  let worst = 0;
  for (let at = last; at.before !== undefined; at = at.before) {
    choices.push(at.choice);
    worst = Math.max(worst, at.cost - at.before.cost);
  }
  return { choices: choices.reverse(), cost: last.cost, worst };
}

import { itemAt } from '@reedplate/pitch';
import { type Limits, type Problem, waysAt } from './problem.js';
import { cheapestWay } from './search.js';
import { cheapestWays } from './search-many.js';
import { airAfterStep, stageOf, stepCost } from './stage.js';
import type { Way } from './way.js';

/**
 * The way whose dearest step is cheapest (minimax), and of such ways the cheapest in all, exact:
 * the lowest ceiling that leaves a way is found by halving among the costs that steps can have.
 */
export function mildestWay(problem: Problem, limits: Limits = {}): Way | undefined {
  const within = (ceiling: number) => cheapestWay(problem, { ...limits, ceiling });
  const ceiling = lowestThat(stepCosts(problem), (cost) => within(cost) !== undefined);
  return ceiling === undefined ? undefined : within(ceiling);
}

/** The `count` best ways by their dearest step, then by their cost in all, then as ties go. */
export function mildestWays(problem: Problem, count: number): readonly Way[] {
  const costs = stepCosts(problem);
  const within = (ceiling: number, most: number) => cheapestWays(problem, most, { ceiling });
  const isEnough = (ceiling: number) => within(ceiling, count).length >= count;
  const ceiling = lowestThat(costs, isEnough) ?? itemAt(costs, -1);
  // Below that ceiling there are fewer ways than asked for, so all of them are here.
  const lower = costs.findLast((cost) => cost < ceiling);
  const below = lower === undefined ? [] : [...within(lower, count)];
  below.sort((a, b) => a.worst - b.worst || a.cost - b.cost);
  // Only those can stand among the cheapest at it, so what is left of these is enough to fill up.
  const at = within(ceiling, count).filter(({ worst }) => worst === ceiling);
  return [...below, ...at].slice(0, count);
}

function lowestThat(
  rising: readonly number[],
  holds: (value: number) => boolean,
): number | undefined {
  let low = 0;
  let high = rising.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (holds(rising[middle] as number)) high = middle;
    else low = middle + 1;
  }
  return rising[low];
}

/** Every cost that a step within reach can have, rising. */
function stepCosts(problem: Problem): readonly number[] {
  const costs = new Set<number>();
  let states = [{ choice: problem.board.choices.length, air: 0 }];
  for (let event = 0; event < problem.times.count; event += 1) {
    const next = new Map<string, { choice: number; air: number }>();
    for (const choice of waysAt(problem, event, {})) {
      const stage = stageOf(problem, event, choice);
      for (const from of states) {
        costs.add(stepCost(stage, from.choice, from.air));
        const air = airAfterStep(stage, from.air);
        next.set(`${choice} ${air}`, { choice, air });
      }
    }
    states = [...next.values()];
  }
  return [...costs].sort((a, b) => a - b);
}

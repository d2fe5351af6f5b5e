import { addLabel, beginLabels, choicesTo, type Labels } from './labels.js';
import { type Limits, type Problem, waysAt } from './problem.js';
import { airAfterStep, type Stage, stageOf, stepCost } from './stage.js';

/** A way through a line: a choice for each moment, and what it costs in thousandths. */
export interface Way {
  readonly choices: readonly number[];
  readonly cost: number;
}

/**
 * The cheapest way through a line, exact: dynamic programming over choice and air, of which both
 * decide what comes after and nothing else does. Of equal ways, the one whose last choice stands
 * first among its moment's choices, then last but one, and so on. Undefined where a moment has no
 * choice within the limits.
 */
export function cheapestWay(problem: Problem, limits: Limits = {}): Way | undefined {
  const { times, board } = problem;
  const labels = beginLabels(4 * times.count + 1, board.choices.length);
  const arrivals = makeArrivals(board.figures.capacitySteps);
  const { ceiling = Infinity } = limits;
  let begin = 0;
  for (let moment = 0; moment < times.count; moment += 1) {
    const end = labels.count;
    for (const choice of waysAt(problem, moment, limits)) {
      const stage = stageOf(problem, moment, choice);
      arrive(stage, labels, begin, end, arrivals, ceiling);
      keepArrivals(stage, labels, begin, end, arrivals);
    }
    if (labels.count === end) return undefined;
    begin = end;
  }
  const best = cheapestLabel(labels, begin);
  return { choices: choicesTo(labels, best), cost: labels.cost[best] ?? 0 };
}

/** Scratch space of one choice: for each amount of air, the best way to arrive with it. */
interface Arrivals {
  readonly middle: number;
  readonly cost: Float64Array;
  readonly before: Int32Array;
}

function makeArrivals(capacitySteps: number): Arrivals {
  const size = 2 * capacitySteps + 1;
  return {
    middle: capacitySteps,
    cost: new Float64Array(size).fill(Infinity),
    before: new Int32Array(size),
  };
}

/** Finds the best way from the states `begin` to `end` to a choice, for each amount of air. */
function arrive(
  stage: Stage,
  labels: Labels,
  begin: number,
  end: number,
  { middle, cost, before }: Arrivals,
  ceiling: number,
): void {
  for (let at = begin; at < end; at += 1) {
    const air = labels.air[at] ?? 0;
    const step = stepCost(stage, labels.choice[at] ?? 0, air);
    const total = (labels.cost[at] ?? 0) + step;
    const slot = airAfterStep(stage, air) + middle;
    if (step > ceiling || total >= (cost[slot] ?? 0)) continue;
    cost[slot] = total;
    before[slot] = at;
  }
}

/** Adds the states arrived in, in the order of those before them: the order of ties. */
function keepArrivals(
  stage: Stage,
  labels: Labels,
  begin: number,
  end: number,
  { middle, cost, before }: Arrivals,
): void {
  for (let at = begin; at < end; at += 1) {
    const air = airAfterStep(stage, labels.air[at] ?? 0);
    const slot = air + middle;
    const total = cost[slot] ?? Infinity;
    if (total === Infinity || before[slot] !== at) continue;
    addLabel(labels, total, air, stage.choice, at);
    cost[slot] = Infinity;
  }
}

function cheapestLabel({ cost, count }: Labels, begin: number): number {
  let best = begin;
  for (let at = begin + 1; at < count; at += 1) {
    if ((cost[at] ?? 0) < (cost[best] ?? 0)) best = at;
  }
  return best;
}

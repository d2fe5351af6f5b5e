import { afterPlaying, afterRest, airTerm } from './air.js';
import { beginLabels, type Labels, makeRoom, wayTo } from './labels.js';
import { type Limits, type Problem, waysAt } from './problem.js';
import { type Stage, stageOf } from './stage.js';
import { hurryTerm } from './terms.js';
import type { Way } from './way.js';

/**
 * The cheapest way through a line, exact: dynamic programming over choice and air, of which both
 * decide what comes after and nothing else does. Of equal ways, the one whose last choice stands
 * first among its moment's choices, then last but one, and so on. Undefined where a moment has no
 * choice within the limits.
 */
export function cheapestWay(problem: Problem, limits: Limits = {}): Way | undefined {
  const { times, board } = problem;
  const labels = beginLabels(board.choices.length);
  const arrivals = arrivalsFor(board.figures.capacitySteps);
  const { ceiling = Infinity } = limits;
  let begin = 0;
  for (let moment = 0; moment < times.count; moment += 1) {
    const end = labels.count;
    for (const choice of waysAt(problem, moment, limits)) {
      const stage = stageOf(problem, moment, choice);
      arrive(stage, labels, begin, end, arrivals, ceiling);
      keepArrivals(choice, labels, begin, end, arrivals);
    }
    if (labels.count === end) return undefined;
    begin = end;
  }
  return wayTo(labels, cheapestLabel(labels, begin), times.count);
}

/** Scratch space: for each amount of air, the best way to arrive with it; and the air of each way. */
interface Arrivals {
  readonly middle: number;
  readonly cost: Float64Array;
  readonly before: Int32Array;
  slots: Int32Array;
}

/** Kept from one search to the next; between choices every cost in it is infinite. */
let kept: Arrivals | undefined;

function arrivalsFor(capacitySteps: number): Arrivals {
  if (kept?.middle !== capacitySteps) {
    const size = 2 * capacitySteps + 1;
    kept = {
      middle: capacitySteps,
      cost: new Float64Array(size).fill(Infinity),
      before: new Int32Array(size),
      slots: new Int32Array(size),
    };
  }
  return kept;
}

/** Finds the best way from the states `begin` to `end` to a choice, for each amount of air. */
function arrive(
  stage: Stage,
  labels: Labels,
  begin: number,
  end: number,
  arrivals: Arrivals,
  ceiling: number,
): void {
  if (arrivals.slots.length < end - begin) arrivals.slots = new Int32Array(2 * (end - begin));
  const { middle, cost, before, slots } = arrivals;
  const { cost: costs, air: airs, choice: choices } = labels;
  const { board, size, choice, fixed, since, recovered, move: flow, figures } = stage;
  const { move, needed } = board;
  for (let at = begin; at < end; at += 1) {
    const cell = (choices[at] as number) * size + choice;
    const need = needed[cell] as number;
    const rested = afterRest(airs[at] as number, recovered);
    const hurry = need > since ? hurryTerm(need, since, figures) : 0;
    const step = fixed + (move[cell] as number) + hurry + airTerm(rested, flow, figures);
    const total = (costs[at] as number) + step;
    const slot = afterPlaying(rested, flow, figures) + middle;
    slots[at - begin] = slot;
    if (step > ceiling || total >= (cost[slot] as number)) continue;
    cost[slot] = total;
    before[slot] = at;
  }
}

/** Adds the states arrived in, in the order of those before them: the order of ties. */
function keepArrivals(
  choice: number,
  labels: Labels,
  begin: number,
  end: number,
  { middle, cost, before, slots }: Arrivals,
): void {
  makeRoom(labels, end - begin);
  const { cost: costs, air: airs, choice: choices, before: befores } = labels;
  let { count } = labels;
  for (let at = begin; at < end; at += 1) {
    const slot = slots[at - begin] as number;
    const total = cost[slot] as number;
    if (before[slot] !== at || total === Infinity) continue;
    costs[count] = total;
    airs[count] = slot - middle;
    choices[count] = choice;
    befores[count] = at;
    count += 1;
    cost[slot] = Infinity;
  }
  labels.count = count;
}

function cheapestLabel({ cost, count }: Labels, begin: number): number {
  let best = begin;
  for (let at = begin + 1; at < count; at += 1) {
    if ((cost[at] ?? 0) < (cost[best] ?? 0)) best = at;
  }
  return best;
}

import { airMove } from './air.js';
import { grown } from './grown.js';
import { secondsHeld, secondsSince, stepsHeld, stepsRested } from './line-times.js';
import { type Limits, type Problem, waysAt } from './problem.js';
import { hurryTerm } from './terms.js';

/**
 * A line on a harp as a graph: for each moment a node for each of its choices, and to each node an
 * arc from every node of the moment before. Only air hangs on more than an arc, so that all else
 * is worked out once, and searches add. Plain tables of numbers, for speed.
 */
export interface Lattice {
  readonly moments: number;
  /** By moment, and one more for the end: its first node, and the first arc to it. */
  readonly firstNode: Int32Array;
  readonly firstArc: Int32Array;
  /** By moment: air steps brought back by the rest before. */
  readonly recovered: Int32Array;
  /** By node: its choice, and the air steps it moves, signed. */
  choice: Int32Array;
  flow: Int32Array;
  /** By arc, node by node: thousandths without air. */
  cost: Float64Array;
  /** Most thousandths that a step may cost, air with it. */
  ceiling: number;
  /** What `airless.ts` finds. By node: least cost to it, the node before, least cost from it on. */
  least: Float64Array;
  before: Int32Array;
  rest: Float64Array;
  /** By moment: the node of the best way. */
  readonly path: Int32Array;
}

/** A lattice with room for so many moments, and for two choices at each; more room grows. */
function makeLattice(moments: number): Lattice {
  const nodes = 2 * moments;
  return {
    moments,
    firstNode: new Int32Array(moments + 1),
    firstArc: new Int32Array(moments + 1),
    recovered: new Int32Array(moments),
    choice: new Int32Array(nodes),
    flow: new Int32Array(nodes),
    cost: new Float64Array(2 * nodes),
    ceiling: Infinity,
    least: new Float64Array(nodes),
    before: new Int32Array(nodes),
    rest: new Float64Array(nodes),
    path: new Int32Array(moments),
  };
}

/** Lays the graph out; undefined where a moment has no choice. */
export function layLattice(problem: Problem, limits: Limits): Lattice | undefined {
  const { count } = problem.times;
  const lattice = makeLattice(count);
  lattice.ceiling = limits.ceiling ?? Infinity;
  let from: readonly number[] = [problem.board.choices.length];
  for (let moment = 0; moment < count; moment += 1) {
    const to = waysAt(problem, moment, limits);
    if (to.length === 0) return undefined;
    layMoment(lattice, problem, moment, from, to);
    from = to;
  }
  return lattice;
}

function growNodes(lattice: Lattice, size: number): void {
  lattice.choice = grown(lattice.choice, size);
  lattice.flow = grown(lattice.flow, size);
  lattice.least = new Float64Array(size);
  lattice.before = new Int32Array(size);
  lattice.rest = new Float64Array(size);
}

function layMoment(
  lattice: Lattice,
  { times, board }: Problem,
  moment: number,
  from: readonly number[],
  to: readonly number[],
): void {
  let node = lattice.firstNode[moment] as number;
  let arc = lattice.firstArc[moment] as number;
  const nodes = node + to.length;
  const arcs = arc + to.length * from.length;
  if (lattice.choice.length < nodes) growNodes(lattice, 2 * nodes);
  if (lattice.cost.length < arcs) lattice.cost = grown(lattice.cost, 2 * arcs);
  lattice.firstNode[moment + 1] = nodes;
  lattice.firstArc[moment + 1] = arcs;
  const { figures, choices, still, holdRate, airRate, move, needed } = board;
  lattice.recovered[moment] = Math.round(stepsRested(times, moment) * figures.recovery);
  const { choice, flow, cost } = lattice;
  const held = secondsHeld(times, moment);
  const heldSteps = stepsHeld(times, moment);
  const since = secondsSince(times, moment);
  const size = choices.length;
  for (const way of to) {
    const fixed = (still[way] as number) + Math.round((holdRate[way] as number) * held);
    choice[node] = way;
    flow[node] = airMove(airRate[way] as number, heldSteps);
    node += 1;
    for (const before of from) {
      const cell = before * size + way;
      const need = needed[cell] as number;
      const hurry = need > since ? hurryTerm(need, since, figures) : 0;
      cost[arc] = fixed + (move[cell] as number) + hurry;
      arc += 1;
    }
  }
}

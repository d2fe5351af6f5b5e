import { airMove } from './air.js';
import { grown } from './grown.js';
import { secondsHeld, secondsSince, stepsHeld, stepsRested } from './line-times.js';
import { type Limits, type Problem, waysAt } from './problem.js';
import { hurryTerm } from './terms.js';

/**
 * A line on a harp as a graph: for each event a node for each of its choices, and to each node an
 * arc from every node of the event before. Only air hangs on more than an arc, so that all else
 * is worked out once, and searches add. Plain tables of numbers, for speed.
 */
export interface Lattice {
  readonly events: number;
  /** By event, and one more for the end: its first node, and the first arc to it. */
  readonly firstNode: Int32Array;
  readonly firstArc: Int32Array;
  /** By event: air steps brought back by the rest before. */
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
  /** By event: the node of the best way. */
  readonly path: Int32Array;
}

/** A lattice with room for so many events, and for two choices at each; more room grows. */
function makeLattice(events: number): Lattice {
  const nodes = 2 * events;
  return {
    events,
    firstNode: new Int32Array(events + 1),
    firstArc: new Int32Array(events + 1),
    recovered: new Int32Array(events),
    choice: new Int32Array(nodes),
    flow: new Int32Array(nodes),
    cost: new Float64Array(2 * nodes),
    ceiling: Infinity,
    least: new Float64Array(nodes),
    before: new Int32Array(nodes),
    rest: new Float64Array(nodes),
    path: new Int32Array(events),
  };
}

/** Lays the graph out; undefined where an event has no choice. */
export function layLattice(problem: Problem, limits: Limits): Lattice | undefined {
  const { count } = problem.times;
  const lattice = makeLattice(count);
  lattice.ceiling = limits.ceiling ?? Infinity;
  let from: readonly number[] = [problem.board.choices.length];
  for (let event = 0; event < count; event += 1) {
    const to = waysAt(problem, event, limits);
    if (to.length === 0) return undefined;
    layEvent(lattice, problem, event, from, to);
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

function layEvent(
  lattice: Lattice,
  { times, board }: Problem,
  event: number,
  from: readonly number[],
  to: readonly number[],
): void {
  let node = lattice.firstNode[event] as number;
  let arc = lattice.firstArc[event] as number;
  const nodes = node + to.length;
  const arcs = arc + to.length * from.length;
  if (lattice.choice.length < nodes) growNodes(lattice, 2 * nodes);
  if (lattice.cost.length < arcs) lattice.cost = grown(lattice.cost, 2 * arcs);
  lattice.firstNode[event + 1] = nodes;
  lattice.firstArc[event + 1] = arcs;
  const { figures, choices, still, holdRate, airRate, move, needed } = board;
  lattice.recovered[event] = Math.round(stepsRested(times, event) * figures.recovery);
  const { choice, flow, cost } = lattice;
  const held = secondsHeld(times, event);
  const heldSteps = stepsHeld(times, event);
  const since = secondsSince(times, event);
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

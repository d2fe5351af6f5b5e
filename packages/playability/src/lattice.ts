import { airMove } from './air.js';
import { grown } from './grown.js';
import { secondsHeld, secondsSince, stepsHeld, stepsRested } from './line-times.js';
import { type Limits, type Problem, waysAt } from './problem.js';
import { hurryTerm } from './terms.js';

/**
 * A line on a harp as a graph: for each moment a node for each of its choices, and to each node an
 * arc from every node of the moment before. Only air hangs on more than an arc, so that all else
 * is worked out once, and searches add. Plain tables of numbers, for speed; what stands in them
 * past the end of the line is of earlier ones.
 */
export interface Lattice {
  moments: number;
  /** By moment, and one more for the end: its first node, and the first arc to it. */
  firstNode: Int32Array;
  firstArc: Int32Array;
  /** By moment: air steps brought back by the rest before. */
  recovered: Int32Array;
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
  path: Int32Array;
}

/** Moments that a new lattice has room for: enough for most tunes. */
const USUAL_SIZE = 512;
/** Largest table that is kept from one line to the next: about a megabyte. */
const LARGEST_KEPT = 131_072;

/** The lattice of the last line. Making its tables costs as much as filling them. */
let kept: Lattice = emptyLattice();

function emptyLattice(): Lattice {
  return {
    moments: 0,
    firstNode: new Int32Array(USUAL_SIZE),
    firstArc: new Int32Array(USUAL_SIZE),
    recovered: new Int32Array(USUAL_SIZE),
    choice: new Int32Array(USUAL_SIZE),
    flow: new Int32Array(USUAL_SIZE),
    cost: new Float64Array(USUAL_SIZE),
    ceiling: Infinity,
    least: new Float64Array(USUAL_SIZE),
    before: new Int32Array(USUAL_SIZE),
    rest: new Float64Array(USUAL_SIZE),
    path: new Int32Array(USUAL_SIZE),
  };
}

/**
 * Lays the graph out; undefined where a moment has no choice. It is good until the next is laid
 * out, since no search runs within another.
 */
export function layLattice(problem: Problem, limits: Limits): Lattice | undefined {
  if (kept.cost.length > LARGEST_KEPT) kept = emptyLattice();
  const { count } = problem.times;
  kept.moments = count;
  kept.ceiling = limits.ceiling ?? Infinity;
  if (kept.path.length <= count) growMoments(kept, 2 * count);
  let from: readonly number[] = [problem.board.choices.length];
  for (let moment = 0; moment < count; moment += 1) {
    const to = waysAt(problem, moment, limits);
    if (to.length === 0) return undefined;
    layMoment(kept, problem, moment, from, to);
    from = to;
  }
  return kept;
}

function growMoments(lattice: Lattice, size: number): void {
  lattice.firstNode = new Int32Array(size);
  lattice.firstArc = new Int32Array(size);
  lattice.recovered = new Int32Array(size);
  lattice.path = new Int32Array(size);
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

import { afterPlaying, afterRest, airTerm } from './air.js';
import { airlessRest, airlessWay, wayAlong } from './airless.js';
import type { Figures } from './figures.js';
import { doSteps, type Steps } from './in-steps.js';
import { beginLabels, type Labels, makeRoom, wayTo } from './labels.js';
import { type Lattice, layLattice } from './lattice.js';
import type { Limits, Problem } from './problem.js';
import type { Way } from './way.js';

/**
 * The cheapest way through a line, exact. Of equal ways, the one whose last choice stands first
 * among its event's choices, then last but one, and so on. Undefined where an event has no choice
 * within the limits.
 *
 * First as if breath were free: no way costs less than the best of those, so where it turns out to
 * take no effort of breath it is the cheapest, and the first of equals. Otherwise what it costs with
 * breath is a bound for the search over choice and air.
 */
export function cheapestWay(problem: Problem, limits: Limits = {}): Way | undefined {
  return doSteps(cheapestWaySteps(problem, limits));
}

/**
 * The search of {@link cheapestWay} in steps: a long line by itself takes longer than a signal may wait.
 */
export function* cheapestWaySteps(problem: Problem, limits: Limits = {}): Steps<Way | undefined> {
  const { figures } = problem.board;
  const lattice = layLattice(problem, limits);
  if (lattice === undefined) return undefined;
  yield;
  const least = airlessWay(lattice);
  if (least === Infinity) return undefined;
  yield;
  const way = wayAlong(lattice, figures);
  if (way.cost === least) return way;
  yield;
  const most = way.worst > lattice.ceiling ? Infinity : way.cost;
  return yield* searchWithAir(lattice, figures, most);
}

/** Events of the search over air between two steps. */
const EVENTS_A_STEP = 1000;

/**
 * Dynamic programming over node and air, of which both decide what comes after and nothing else
 * does. States that cannot lead to an end for `most` or less are let go.
 */
function* searchWithAir(lattice: Lattice, figures: Figures, most: number): Steps<Way | undefined> {
  airlessRest(lattice);
  yield;
  const labels = beginLabels();
  const arrivals = noArrivals(figures.capacitySteps);
  const search = { lattice, figures, most, labels, arrivals };
  let begin = 0;
  for (let event = 0; event < lattice.events; event += 1) {
    const end = labels.count;
    makeRoom(labels, (end - begin) * widthAt(lattice, event));
    if (end - begin === 1) goOnAlone(search, event, begin);
    else goOnTogether(search, event, begin, end);
    if (labels.count === end) return undefined;
    begin = end;
    if (event % EVENTS_A_STEP === EVENTS_A_STEP - 1) yield;
  }
  return wayTo(labels, cheapestLabel(labels, begin), lattice);
}

const widthAt = ({ firstNode }: Lattice, event: number): number =>
  (firstNode[event + 1] as number) - (firstNode[event] as number);

interface Search {
  readonly lattice: Lattice;
  readonly figures: Figures;
  /** Thousandths that some way costs. */
  readonly most: number;
  readonly labels: Labels;
  readonly arrivals: Arrivals;
}

/** For each amount of air, the best way to arrive with it; and the air of each way. */
interface Arrivals {
  readonly middle: number;
  readonly cost: Float64Array;
  readonly before: Int32Array;
  slots: Int32Array;
}

/** No way has arrived yet: between nodes every cost is infinite. */
function noArrivals(capacitySteps: number): Arrivals {
  const size = 2 * capacitySteps + 1;
  return {
    middle: capacitySteps,
    cost: new Float64Array(size).fill(Infinity),
    before: new Int32Array(size),
    slots: new Int32Array(size),
  };
}

/** Goes on from the only state there is: nothing to compare, as on most notes of most lines. */
function goOnAlone({ lattice, figures, most, labels }: Search, event: number, at: number): void {
  const { firstNode, firstArc, recovered, flow, cost: arcs, rest, ceiling } = lattice;
  const { cost, air, node: nodes, before } = labels;
  const begin = firstNode[event] as number;
  const end = firstNode[event + 1] as number;
  const from = event === 0 ? -1 : (firstNode[event - 1] as number);
  const width = event === 0 ? 1 : begin - from;
  const rested = afterRest(air[at] as number, recovered[event] as number);
  let arc = (firstArc[event] as number) + (nodes[at] as number) - from;
  let { count } = labels;
  for (let node = begin; node < end; node += 1) {
    const move = flow[node] as number;
    const step = (arcs[arc] as number) + airTerm(rested, move, figures);
    const total = (cost[at] as number) + step;
    arc += width;
    if (total + (rest[node] as number) > most || step > ceiling) continue;
    cost[count] = total;
    air[count] = afterPlaying(rested, move, figures);
    nodes[count] = node;
    before[count] = at;
    count += 1;
  }
  labels.count = count;
}

/** Goes on from the states `begin` to `end`, node by node. */
function goOnTogether(search: Search, event: number, begin: number, end: number): void {
  const { firstNode } = search.lattice;
  const last = firstNode[event + 1] as number;
  for (let node = firstNode[event] as number; node < last; node += 1) {
    arrive(search, event, node, begin, end);
    keepArrivals(search, node, begin, end);
  }
}

/** Finds the best way from the states `begin` to `end` to a node, for each amount of air. */
function arrive(search: Search, event: number, node: number, begin: number, end: number): void {
  const { lattice, figures, most, labels, arrivals } = search;
  if (arrivals.slots.length < end - begin) arrivals.slots = new Int32Array(2 * (end - begin));
  const { middle, cost, before, slots } = arrivals;
  const { cost: costs, air: airs, node: nodes } = labels;
  const { firstNode, firstArc, cost: arcs, ceiling } = lattice;
  const from = event === 0 ? -1 : (firstNode[event - 1] as number);
  const here = firstNode[event] as number;
  const firstOfNode = (firstArc[event] as number) + (node - here) * (event === 0 ? 1 : here - from);
  const flow = lattice.flow[node] as number;
  const recovered = lattice.recovered[event] as number;
  const bound = most - (lattice.rest[node] as number);
  for (let at = begin; at < end; at += 1) {
    const rested = afterRest(airs[at] as number, recovered);
    const step =
      (arcs[firstOfNode + (nodes[at] as number) - from] as number) + airTerm(rested, flow, figures);
    const total = (costs[at] as number) + step;
    const slot = afterPlaying(rested, flow, figures) + middle;
    slots[at - begin] = slot;
    if (total > bound || step > ceiling || total >= (cost[slot] as number)) continue;
    cost[slot] = total;
    before[slot] = at;
  }
}

/** Adds the states arrived in, in the order of those before them: the order of ties. */
function keepArrivals(
  { labels, arrivals }: Search,
  node: number,
  begin: number,
  end: number,
): void {
  const { middle, cost, before, slots } = arrivals;
  const { cost: costs, air: airs, node: nodes, before: befores } = labels;
  let { count } = labels;
  for (let at = begin; at < end; at += 1) {
    const slot = slots[at - begin] as number;
    const total = cost[slot] as number;
    if (before[slot] !== at || total === Infinity) continue;
    costs[count] = total;
    airs[count] = slot - middle;
    nodes[count] = node;
    befores[count] = at;
    count += 1;
    cost[slot] = Infinity;
  }
  labels.count = count;
}

function cheapestLabel({ cost, count }: Labels, begin: number): number {
  let best = begin;
  for (let at = begin + 1; at < count; at += 1) {
    if ((cost[at] as number) < (cost[best] as number)) best = at;
  }
  return best;
}

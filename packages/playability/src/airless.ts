import { afterPlaying, afterRest, airTerm } from './air.js';
import type { Figures } from './figures.js';
import type { Lattice } from './lattice.js';
import type { Way } from './way.js';

/**
 * Finds the best way were breath free, into `path`; ties as in `cheapestWay`. No way costs less.
 * Gives its cost: Infinity where the ceiling leaves none.
 */
export function airlessWay(lattice: Lattice): number {
  const { events, firstNode, least, before, path } = lattice;
  for (let event = 0; event < events; event += 1) reachEvent(lattice, event);
  let node = firstNode[events - 1] as number;
  for (let at = node + 1; at < (firstNode[events] as number); at += 1) {
    if ((least[at] as number) < (least[node] as number)) node = at;
  }
  const cost = least[node] as number;
  for (let event = events - 1; event >= 0; event -= 1) {
    path[event] = node;
    node = before[node] as number;
  }
  return cost;
}

/** Finds the least cost to each node of an event. */
function reachEvent(lattice: Lattice, event: number): void {
  const { firstNode, firstArc, cost, ceiling, least, before } = lattice;
  const begin = firstNode[event] as number;
  const end = firstNode[event + 1] as number;
  // The beginning of a line stands before the first node.
  const from = event === 0 ? -1 : (firstNode[event - 1] as number);
  let arc = firstArc[event] as number;
  for (let node = begin; node < end; node += 1) {
    let best = Infinity;
    for (let at = from; at < begin; at += 1) {
      const step = cost[arc] as number;
      const total = at < 0 ? step : (least[at] as number) + step;
      arc += 1;
      if (step > ceiling || total >= best) continue;
      best = total;
      before[node] = at;
    }
    least[node] = best;
  }
}

/** Finds the least that the way on from each node costs were breath free, into `rest`. */
export function airlessRest(lattice: Lattice): void {
  const { events, firstNode, firstArc, cost, ceiling, rest } = lattice;
  rest.fill(Infinity, 0, firstNode[events - 1] as number);
  rest.fill(0, firstNode[events - 1] as number, firstNode[events] as number);
  for (let event = events - 1; event > 0; event -= 1) {
    const begin = firstNode[event] as number;
    const end = firstNode[event + 1] as number;
    let arc = firstArc[event] as number;
    for (let node = begin; node < end; node += 1) {
      for (let from = firstNode[event - 1] as number; from < begin; from += 1) {
        const step = cost[arc] as number;
        const total = (rest[node] as number) + step;
        arc += 1;
        if (step <= ceiling && total < (rest[from] as number)) rest[from] = total;
      }
    }
  }
}

/** The way along `path`, with what it costs where breath counts. */
export function wayAlong(lattice: Lattice, figures: Figures): Way {
  const { events, firstNode, firstArc, recovered, flow, choice, cost, path } = lattice;
  const choices = new Array<number>(events);
  let total = 0;
  let worst = 0;
  let air = 0;
  let place = 0;
  let width = 1;
  for (let event = 0; event < events; event += 1) {
    const node = path[event] as number;
    const begin = firstNode[event] as number;
    const arc = (firstArc[event] as number) + (node - begin) * width + place;
    const rested = afterRest(air, recovered[event] as number);
    const move = flow[node] as number;
    const step = (cost[arc] as number) + airTerm(rested, move, figures);
    total += step;
    worst = Math.max(worst, step);
    air = afterPlaying(rested, move, figures);
    choices[event] = choice[node] as number;
    place = node - begin;
    width = (firstNode[event + 1] as number) - begin;
  }
  return { choices, cost: total, worst };
}

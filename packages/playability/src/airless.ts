import { afterPlaying, afterRest, airTerm } from './air.js';
import type { Figures } from './figures.js';
import type { Lattice } from './lattice.js';
import type { Way } from './way.js';

/**
 * Finds the best way were breath free, into `path`; ties as in `cheapestWay`. No way costs less.
 * Gives its cost: Infinity where the ceiling leaves none.
 */
export function airlessWay(lattice: Lattice): number {
  const { moments, firstNode, least, before, path } = lattice;
  for (let moment = 0; moment < moments; moment += 1) reachMoment(lattice, moment);
  let node = firstNode[moments - 1] as number;
  for (let at = node + 1; at < (firstNode[moments] as number); at += 1) {
    if ((least[at] as number) < (least[node] as number)) node = at;
  }
  const cost = least[node] as number;
  for (let moment = moments - 1; moment >= 0; moment -= 1) {
    path[moment] = node;
    node = before[node] as number;
  }
  return cost;
}

/** Finds the least cost to each node of a moment. */
function reachMoment(lattice: Lattice, moment: number): void {
  const { firstNode, firstArc, cost, ceiling, least, before } = lattice;
  const begin = firstNode[moment] as number;
  const end = firstNode[moment + 1] as number;
  // The beginning of a line stands before the first node.
  const from = moment === 0 ? -1 : (firstNode[moment - 1] as number);
  let arc = firstArc[moment] as number;
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
  const { moments, firstNode, firstArc, cost, ceiling, rest } = lattice;
  rest.fill(Infinity, 0, firstNode[moments - 1] as number);
  rest.fill(0, firstNode[moments - 1] as number, firstNode[moments] as number);
  for (let moment = moments - 1; moment > 0; moment -= 1) {
    const begin = firstNode[moment] as number;
    const end = firstNode[moment + 1] as number;
    let arc = firstArc[moment] as number;
    for (let node = begin; node < end; node += 1) {
      for (let from = firstNode[moment - 1] as number; from < begin; from += 1) {
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
  const { moments, firstNode, firstArc, recovered, flow, choice, cost, path } = lattice;
  const choices = new Array<number>(moments);
  let total = 0;
  let worst = 0;
  let air = 0;
  let place = 0;
  let width = 1;
  for (let moment = 0; moment < moments; moment += 1) {
    const node = path[moment] as number;
    const begin = firstNode[moment] as number;
    const arc = (firstArc[moment] as number) + (node - begin) * width + place;
    const rested = afterRest(air, recovered[moment] as number);
    const move = flow[node] as number;
    const step = (cost[arc] as number) + airTerm(rested, move, figures);
    total += step;
    worst = Math.max(worst, step);
    air = afterPlaying(rested, move, figures);
    choices[moment] = choice[node] as number;
    place = node - begin;
    width = (firstNode[moment + 1] as number) - begin;
  }
  return { choices, cost: total, worst };
}

import type { Measure } from './measure.js';
import type { JumpPlan } from './plan-jumps.js';
import { playOrder } from './play-order.js';

/**
 * The measures in the order they are played, with a jump back: repeats are taken before it, and not
 * again after it, when the last ending is the one played (common practice, no source).
 */
export function jumpOrder(measures: readonly Measure[], plan: JumpPlan): readonly number[] {
  const { from, to, stop, coda } = plan;
  const first = playOrder(measures);
  const before = first.slice(0, first.lastIndexOf(from) + 1);
  const last = stop ?? coda?.after ?? from;
  const again = playOnce(measures, to, last);
  if (stop !== undefined) return [...before, ...again];
  return [...before, ...again, ...playFrom(measures, coda?.to ?? from + 1)];
}

/** The measures from one to another, both included, each once; of endings the last. */
function playOnce(measures: readonly Measure[], from: number, to: number): readonly number[] {
  const order: number[] = [];
  for (let at = from; at <= to; at += 1) {
    const { endings } = measures[at] as Measure;
    if (endings === undefined || endings.includes(lastPass(measures, at))) order.push(at);
  }
  return order;
}

/** The highest number of the endings that `at` stands among. */
function lastPass(measures: readonly Measure[], at: number): number {
  let first = at;
  while (measures[first - 1]?.endings !== undefined) first -= 1;
  let most = 0;
  for (let next = first; measures[next]?.endings !== undefined; next += 1) {
    most = Math.max(most, ...(measures[next]?.endings ?? []));
  }
  return most;
}

function playFrom(measures: readonly Measure[], from: number): readonly number[] {
  return playOrder(measures.slice(from)).map((at) => at + from);
}

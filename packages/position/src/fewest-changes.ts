import type { Harp } from '@reedplate/layout';
import type { HarpPick } from './pick.js';

/** The best way to have reached a pick: its changes, its weight, and the pick before it. */
interface Reached {
  readonly pick: HarpPick;
  readonly changes: number;
  readonly weight: number;
  readonly before: Reached | undefined;
}

/**
 * One pick for each song such that the harp changes least often and, among those, the weights add
 * up to most. `choices` has at least one pick for every song, and a harp is one object throughout.
 *
 * The best way to a song on a harp either keeps that harp from the song before or comes from the
 * best way of all with one more change; so one pass over the songs finds the optimum.
 */
export function fewestChanges(choices: readonly (readonly HarpPick[])[]): readonly HarpPick[] {
  let reached: readonly Reached[] = [];
  for (const picks of choices) {
    const byHarp = new Map<Harp, Reached>(reached.map((way) => [way.pick.harp, way]));
    const best = reached.length === 0 ? undefined : reached.reduce(better);
    reached = picks.map((pick) => reach(pick, byHarp.get(pick.harp), best));
  }
  return pathOf(reached.reduce(better));
}

function reach(pick: HarpPick, kept: Reached | undefined, best: Reached | undefined): Reached {
  const stay = kept && { pick, ...added(kept, pick, 0), before: kept };
  const change = best && { pick, ...added(best, pick, 1), before: best };
  if (stay !== undefined && change !== undefined) return better(stay, change);
  return stay ?? change ?? { pick, changes: 0, weight: pick.weight, before: undefined };
}

function added(way: Reached, pick: HarpPick, changes: number): Pick<Reached, 'changes' | 'weight'> {
  return { changes: way.changes + changes, weight: way.weight + pick.weight };
}

/** Fewer changes first, then more weight; the first on a tie. */
function better(a: Reached, b: Reached): Reached {
  if (a.changes !== b.changes) return a.changes < b.changes ? a : b;
  return b.weight > a.weight ? b : a;
}

function pathOf(last: Reached): readonly HarpPick[] {
  const path: HarpPick[] = [];
  for (let way: Reached | undefined = last; way !== undefined; way = way.before) {
    path.push(way.pick);
  }
  return path.reverse();
}

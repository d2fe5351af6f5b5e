import type { Onsets } from '../front/onsets.js';

/** How stiff the beat is: what an unusual distance costs, in usual onsets. */
const STIFFNESS = 300;

/** How far a beat may be from the usual distance, as a share of it. */
const SHORTEST = 0.75;
const LONGEST = 1.33;

/**
 * Seconds of the beats of a sound whose usual distance is known: the best path through its onsets (Ellis, Beat
 * tracking by dynamic programming, J. New Music Research 36(1), 2007). They begin before the sound and end
 * after it, so that all of it lies between beats.
 */
export function trackBeats({ all, hop }: Onsets, beat: number): readonly number[] {
  const usual = beat / hop;
  const [nearest, farthest] = [Math.round(usual * SHORTEST), Math.round(usual * LONGEST)];
  const costs = Float64Array.from(
    { length: farthest - nearest + 1 },
    (_, at) => STIFFNESS * Math.log((nearest + at) / usual) ** 2,
  );
  const best = new Float64Array(all.length);
  const before = new Int32Array(all.length).fill(-1);
  for (let at = 0; at < all.length; at += 1) {
    let most = 0;
    for (let gap = nearest; gap <= farthest && gap <= at; gap += 1) {
      const value = (best[at - gap] as number) - (costs[gap - nearest] as number);
      if (value > most) {
        most = value;
        before[at] = at - gap;
      }
    }
    best[at] = most + (all[at] as number);
  }
  return extend(pathTo(lastBeat(best, Math.ceil(usual)), before), beat / hop, all.length).map(
    (at) => at * hop,
  );
}

/** The best of the places within the last beat. */
function lastBeat(best: Float64Array, usual: number): number {
  let last = Math.max(0, best.length - usual);
  for (let at = last; at < best.length; at += 1)
    if ((best[at] as number) > (best[last] as number)) last = at;
  return last;
}

function pathTo(last: number, before: Int32Array): number[] {
  const path: number[] = [];
  for (let at = last; at >= 0; at = before[at] as number) path.push(at);
  return path.reverse();
}

/** Beats at the usual distance before the first and after the last. */
function extend(path: readonly number[], usual: number, length: number): number[] {
  const beats = [...path];
  while ((beats[0] as number) > 0) beats.unshift((beats[0] as number) - usual);
  while ((beats.at(-1) as number) < length - 1) beats.push((beats.at(-1) as number) + usual);
  return beats;
}

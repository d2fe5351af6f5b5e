import { STEP } from './figure.js';
import type { Pieces } from './pieces.js';
import type { Runs } from './runs.js';

/** Onsets no further apart than this, in felt beats of the window, are struck together. */
const TOGETHER = 1 / 16;

/** What {@link findResolutions} finds. */
export interface Resolutions {
  /** For each piece the run it resolves to; −1 for none. */
  readonly resolvesTo: Int32Array;
  /** For each run the lowest one of the next onset; −1 for the last. */
  readonly next: Int32Array;
}

/**
 * Which run each piece resolves to: a tone of its chord, a step away, struck with the next onset
 * and not later than the window after the piece began; −1 where the piece is a tone itself, or
 * finds none. Half steps are preferred to whole, up to down. Runs from the end, so that every
 * onset is looked at once.
 */
export function findResolutions(
  runs: Runs,
  pieces: Pieces,
  isTone: Uint8Array,
  within: number,
): Resolutions {
  const resolvesTo = new Int32Array(pieces.count).fill(-1);
  const next = new Int32Array(runs.count).fill(-1);
  const heard: Heard = { target: new Int32Array(128), group: new Int32Array(128).fill(-1) };
  let last = runs.count;
  while (last > 0) {
    const low = firstStruckWith(runs, last - 1, within * TOGETHER);
    for (let run = low; run < last && last < runs.count; run += 1) {
      next[run] = last;
      const piece = (pieces.first[run + 1] as number) - 1;
      if (piece < (pieces.first[run] as number) || isTone[piece] === 1) continue;
      const wait = (runs.start[last] as number) - (pieces.start[piece] as number);
      if (wait > 0 && wait <= within) resolvesTo[piece] = stepTarget(run, runs, heard, last);
    }
    hearTones(low, last, runs, pieces, isTone, heard);
    last = low;
  }
  return { resolvesTo, next };
}

/** For each pitch the last run heard (from the end) as a chord tone, and the group it was in. */
interface Heard {
  readonly target: Int32Array;
  readonly group: Int32Array;
}

function hearTones(
  low: number,
  last: number,
  runs: Runs,
  pieces: Pieces,
  isTone: Uint8Array,
  { target, group }: Heard,
): void {
  for (let run = last - 1; run >= low; run -= 1) {
    const piece = pieces.first[run] as number;
    if (piece === pieces.first[run + 1] || isTone[piece] === 0) continue;
    target[runs.pitch[run] as number] = run;
    group[runs.pitch[run] as number] = low;
  }
}

/** Lowest run of those struck together with one, looking back from it. */
function firstStruckWith(runs: Runs, run: number, together: number): number {
  const onset = runs.start[run] as number;
  let low = run;
  while (low > 0 && onset - (runs.start[low - 1] as number) <= together) low -= 1;
  return low;
}

function stepTarget(run: number, { pitch }: Runs, { target, group }: Heard, next: number): number {
  const from = pitch[run] as number;
  for (let step = 1; step <= STEP; step += 1) {
    if (group[from + step] === next) return target[from + step] as number;
    if (group[from - step] === next) return target[from - step] as number;
  }
  return -1;
}

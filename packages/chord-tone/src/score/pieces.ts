import { undoSwing } from './align.js';
import type { Change, ScoringGrid } from './grid.js';
import type { Runs } from './runs.js';

/** Parts of notes, cut where the chord changes, as columns of numbers in the order of onsets. */
export interface Pieces {
  readonly count: number;
  /** Which run each is part of. */
  readonly run: Int32Array;
  readonly start: Float64Array;
  readonly end: Float64Array;
  /** Change each sounds in by the clock; −1 before the first chord. */
  readonly change: Int32Array;
  /** For a note struck just before a change: the coming one; else −1. */
  readonly coming: Int32Array;
  /** First piece of each run, and one past the last; equal for a run outside the chart. */
  readonly first: Int32Array;
}

/** What cutting needs to know. */
export interface CutOptions {
  /** Felt beats before a change from which a note may belong to the coming chord. */
  readonly pushWithin: number;
  readonly swing: number;
}

/** Cuts runs at the changes; what lies outside the chart falls away. */
export function cutPieces(runs: Runs, grid: ScoringGrid, options: CutOptions): Pieces {
  const pieces = emptyPieces(runs, grid);
  let count = 0;
  let at = 0;
  const { changes, end: chartEnd } = grid;
  for (let run = 0; run < runs.count; run += 1) {
    pieces.first[run] = count;
    let start = runs.start[run] as number;
    const end = Math.min(runs.end[run] as number, chartEnd);
    if (start >= chartEnd || end <= 0) continue;
    while (at + 1 < changes.length && (changes[at + 1] as Change).start <= start) at += 1;
    let change = (changes[0] as Change).start > start ? -1 : at;
    const coming = comingChange(start, change, grid, options);
    while (start < end) {
      const next = changes[change + 1]?.start ?? chartEnd;
      const stop = Math.min(end, next);
      pieces.run[count] = run;
      pieces.start[count] = start;
      pieces.end[count] = stop;
      pieces.change[count] = change;
      pieces.coming[count] = count === pieces.first[run] ? coming : -1;
      count += 1;
      start = stop;
      change += 1;
    }
  }
  pieces.first[runs.count] = count;
  return { ...pieces, count };
}

function comingChange(
  start: number,
  change: number,
  { changes, pickup, beatTicks }: ScoringGrid,
  { pushWithin, swing }: CutOptions,
): number {
  const next = changes[change + 1];
  if (next === undefined || next.start - start > beatTicks) return -1;
  const beats = undoSwing((start - pickup) / beatTicks, swing);
  const nextBeats = (next.start - pickup) / beatTicks;
  return nextBeats - beats <= pushWithin + 1e-6 ? change + 1 : -1;
}

/** Room for every piece: one a run, and one more for each change a run is held over. */
function emptyPieces(runs: Runs, { changes, end: chartEnd }: ScoringGrid): Pieces {
  let size = runs.count;
  let at = 0;
  for (let run = 0; run < runs.count; run += 1) {
    const start = runs.start[run] as number;
    const end = Math.min(runs.end[run] as number, chartEnd);
    while (at < changes.length && (changes[at] as Change).start <= start) at += 1;
    for (let held = at; held < changes.length && (changes[held] as Change).start < end; held += 1) {
      size += 1;
    }
  }
  return {
    count: 0,
    run: new Int32Array(size),
    start: new Float64Array(size),
    end: new Float64Array(size),
    change: new Int32Array(size),
    coming: new Int32Array(size),
    first: new Int32Array(runs.count + 1),
  };
}

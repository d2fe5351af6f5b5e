import { undoSwing } from './align.js';
import type { ScoringGrid } from './grid.js';
import { metricalStrength } from './metrical.js';
import type { Runs } from './runs.js';

/** Parts of notes, cut where the chord changes, as columns of numbers in the order of onsets. */
export interface Pieces {
  readonly count: number;
  /** Which run each is part of. */
  readonly run: Int32Array;
  readonly start: Float64Array;
  readonly end: Float64Array;
  /** Change each sounds in by the clock; 0 before the first chord. */
  readonly change: Int32Array;
  /** For a note struck just before a change: the coming one; else 0. */
  readonly coming: Int32Array;
  /** Metrical strength of the place each begins at, swing undone. */
  readonly metre: Float64Array;
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
  const { changes, starts, end: chartEnd } = grid;
  let count = 0;
  let at = 0;
  for (let run = 0; run < runs.count; run += 1) {
    pieces.first[run] = count;
    let start = runs.start[run] as number;
    const end = Math.min(runs.end[run] as number, chartEnd);
    if (start >= chartEnd || end <= 0) continue;
    while (at + 1 < changes.length && (starts[at + 1] as number) <= start) at += 1;
    pieces.coming[count] = comingChange(start, at, grid, options);
    for (let change = at; start < end; change += 1) {
      const stop = Math.min(end, starts[change + 1] as number);
      pieces.run[count] = run;
      pieces.start[count] = start;
      pieces.end[count] = stop;
      pieces.change[count] = change;
      pieces.metre[count] = strengthAt(start, grid, options.swing);
      count += 1;
      start = stop;
    }
  }
  pieces.first[runs.count] = count;
  return { ...pieces, count };
}

function comingChange(
  start: number,
  change: number,
  { changes, starts, pickup, beatTicks }: ScoringGrid,
  { pushWithin, swing }: CutOptions,
): number {
  const next = starts[change + 1] as number;
  if (next - start > beatTicks || change + 1 === changes.length) return 0;
  const beats = undoSwing((start - pickup) / beatTicks, swing);
  const nextBeats = (next - pickup) / beatTicks;
  return nextBeats - beats <= pushWithin + 1e-6 ? change + 1 : 0;
}

/** Metrical strength of a tick, counted within its bar so that every chorus gives the same. */
function strengthAt(
  tick: number,
  { pickup, barTicks, beatTicks }: ScoringGrid,
  swing: number,
): number {
  const fromBarOne = tick - pickup;
  const inBar = fromBarOne - Math.floor(fromBarOne / barTicks) * barTicks;
  return metricalStrength(undoSwing(inBar / beatTicks, swing), barTicks / beatTicks);
}

/** Room for every piece: one a run, and one more for each change a run is held over. */
function emptyPieces(runs: Runs, { changes, starts, end: chartEnd }: ScoringGrid): Pieces {
  let size = runs.count;
  let at = 0;
  for (let run = 0; run < runs.count; run += 1) {
    const start = runs.start[run] as number;
    const end = Math.min(runs.end[run] as number, chartEnd);
    while (at < changes.length && (starts[at] as number) <= start) at += 1;
    for (let held = at; held < changes.length && (starts[held] as number) < end; held += 1) {
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
    metre: new Float64Array(size),
    first: new Int32Array(runs.count + 1),
  };
}

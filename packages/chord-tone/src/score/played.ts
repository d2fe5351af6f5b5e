import type { ScoringGrid } from './grid.js';
import type { Heard } from './sounded.js';

/** How much of a chart is played. */
export interface Played {
  /** Bars that have a chord. */
  readonly of: number;
  /** Those of them, from 1, that lie in a run of empty bars too long to be a rest between phrases. */
  readonly silent: readonly number[];
}

/** Most empty bars in a row that are a rest between phrases: call and response leaves two. */
const LONGEST_REST = 2;

/** Which bars are silent: runs of three and more bars with a chord and without a note. */
export function barsPlayed(notes: readonly Heard[], grid: ScoringGrid): Played {
  const withChord = barsWith(
    grid.changes.filter(({ table }) => table.chord !== null),
    grid,
  );
  const sounding = barsWith(notes, grid);
  const silent: number[] = [];
  let run: number[] = [];
  for (const bar of [...withChord, Number.NaN]) {
    if (withChord.has(bar) && !sounding.has(bar)) {
      run.push(bar);
      continue;
    }
    if (run.length > LONGEST_REST) silent.push(...run);
    run = [];
  }
  return { of: withChord.size, silent };
}

/** The bars, from 1, in which something lies. */
function barsWith(
  times: readonly { readonly start: number; readonly end: number }[],
  { pickup, end: chartEnd, barTicks }: ScoringGrid,
): ReadonlySet<number> {
  const bars = new Set<number>();
  let reached = Number.NEGATIVE_INFINITY;
  for (const { start, end } of times) {
    const first = Math.floor((Math.max(start, 0, reached) - pickup) / barTicks);
    const past = Math.ceil((Math.min(end, chartEnd) - pickup) / barTicks);
    for (let bar = Math.max(first, 0); bar < past; bar += 1) bars.add(bar + 1);
    reached = Math.max(reached, end);
  }
  return bars;
}

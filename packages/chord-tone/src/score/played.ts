import type { ScoringGrid } from './grid.js';
import type { Runs } from './runs.js';

/** In how many bars of a chart something is played. */
export interface Played {
  /** Bars with a chord in which a note sounds. */
  readonly bars: number;
  /** Bars with a chord. */
  readonly of: number;
}

/** In how many bars with a chord a line sounds, whatever the pitch. */
export function barsPlayed(runs: Runs, grid: ScoringGrid): Played {
  const withChord = new Set<number>();
  for (const { start, end, table } of grid.changes) {
    if (table >= 0) for (const bar of barsBetween(start, end, grid)) withChord.add(bar);
  }
  const sounding = new Set<number>();
  let reached = 0;
  for (let run = 0; run < runs.count; run += 1) {
    // In the order of their onsets: the bars before the farthest one reached are marked already.
    const from = Math.max(runs.start[run] as number, reached);
    const to = Math.min(runs.end[run] as number, grid.end);
    for (const bar of barsBetween(from, to, grid)) sounding.add(bar);
    reached = Math.max(reached, to);
  }
  const bars = [...withChord].filter((bar) => sounding.has(bar)).length;
  return { bars, of: withChord.size };
}

/** Bars from 0 that some ticks lie in. */
function barsBetween(
  start: number,
  end: number,
  { pickup, barTicks }: ScoringGrid,
): readonly number[] {
  const first = Math.floor((start - pickup) / barTicks);
  const past = Math.ceil((end - pickup) / barTicks);
  return Array.from({ length: Math.max(0, past - first) }, (_, index) => first + index);
}

/**
 * What part of a total counts: all of it where enough of the chart is played, and less in
 * proportion where less is.
 */
export function partPlayed({ bars, of }: Played, enough: number): number {
  return of === 0 || enough === 0 ? 1 : Math.min(1, bars / of / enough);
}

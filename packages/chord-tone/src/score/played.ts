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
  const withChord = noBars(grid);
  for (const { start, end, table } of grid.changes) {
    if (table.chord !== null) markBars(withChord, start, end, grid);
  }
  const sounding = noBars(grid);
  let reached = 0;
  for (let run = 0; run < runs.count; run += 1) {
    // In the order of their onsets: the bars before the farthest one reached are marked already.
    const from = Math.max(runs.start[run] as number, reached);
    const to = Math.min(runs.end[run] as number, grid.end);
    markBars(sounding, from, to, grid);
    reached = Math.max(reached, to);
  }
  let [bars, of] = [0, 0];
  for (let bar = 0; bar < withChord.length; bar += 1) {
    of += withChord[bar] as number;
    bars += (withChord[bar] as number) & (sounding[bar] as number);
  }
  return { bars, of };
}

/** One mark for each bar, the pickup first. */
function noBars({ end, pickup, barTicks }: ScoringGrid): Uint8Array {
  return new Uint8Array(1 + Math.ceil((end - pickup) / barTicks));
}

/** Marks the bars that some ticks lie in. */
function markBars(
  marks: Uint8Array,
  start: number,
  end: number,
  { pickup, barTicks }: ScoringGrid,
): void {
  const first = Math.floor((start - pickup) / barTicks);
  const past = Math.ceil((end - pickup) / barTicks);
  for (let bar = first; bar < past; bar += 1) marks[bar + 1] = 1;
}

/**
 * What part of a total counts: all of it where enough of the chart is played, and less in
 * proportion where less is.
 */
export function partPlayed({ bars, of }: Played, enough: number): number {
  return of === 0 || enough === 0 ? 1 : Math.min(1, bars / of / enough);
}

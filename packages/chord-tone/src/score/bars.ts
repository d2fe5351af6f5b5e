import type { Chart } from '@reedplate/form';
import { itemAt } from '@reedplate/pitch';
import type { Change, ScoringGrid } from './grid.js';
import type { Judged } from './judge.js';
import type { BarScore } from './score-types.js';

/** How each bar of a chart is followed; a push counts in the bar of the chord it belongs to. */
export function scoreBars(
  judged: readonly Judged[],
  chart: Chart,
  grid: ScoringGrid,
): readonly BarScore[] {
  const sums = Array.from({ length: chart.bars }, () => ({ notes: 0, credit: 0, weight: 0 }));
  for (const one of judged) if (one.class !== 'unjudged') spread(one, grid, sums);
  const chords = chordsByBar(chart);
  const bars = sums.map(({ notes, credit, weight }, at) =>
    Object.freeze({
      bar: at + 1,
      chords: itemAt(chords, at),
      notes,
      chordFit: weight === 0 ? null : credit / weight,
    }),
  );
  return Object.freeze(bars);
}

interface BarSum {
  notes: number;
  credit: number;
  weight: number;
}

/** Gives each bar the part of a note that sounds in it; the weight of striking goes to the first. */
function spread(
  { part, weight, credit }: Judged,
  { changes, pickup, barTicks, beatTicks }: ScoringGrid,
  sums: readonly BarSum[],
): void {
  const start = Math.max(part.start, (changes[part.change] as Change).start);
  const end = Math.max(part.end, start + 1);
  let left = weight;
  for (let at = Math.floor((start - pickup) / barTicks); left > 0; at += 1) {
    const sum = sums[at];
    if (sum === undefined) return;
    const beyond = Math.max(0, end - (pickup + (at + 1) * barTicks)) / beatTicks;
    sum.notes += 1;
    sum.credit += (left - beyond) * credit;
    sum.weight += left - beyond;
    left = beyond;
  }
}

/** Symbols of the chords of each bar, from 0. */
function chordsByBar({ spans, bars }: Chart): readonly (readonly string[])[] {
  const chords = new Array<readonly string[]>(bars).fill(NO_CHORDS);
  for (const { bar, chord } of spans) {
    const before = chords[bar - 1];
    if (chord === null || before === undefined) continue;
    chords[bar - 1] = Object.freeze([...before, chord.symbol]);
  }
  return chords;
}

const NO_CHORDS: readonly string[] = Object.freeze([]);

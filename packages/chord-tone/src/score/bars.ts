import type { Chart } from '@reedplate/form';
import type { ScoringGrid } from './grid.js';
import type { Judged } from './judge.js';
import { CLASS } from './note-class.js';
import type { BarScore } from './score-types.js';

/** How each bar of a chart is followed; a push counts in the bar of the chord it belongs to. */
export function scoreBars(judged: Judged, chart: Chart, grid: ScoringGrid): readonly BarScore[] {
  const bars = Array.from({ length: chart.bars }, (): BarSum => ({ notes: 0, sum: 0, weight: 0 }));
  for (let piece = 0; piece < judged.pieces.count; piece += 1) {
    if (judged.class[piece] !== CLASS.unjudged) spreadPiece(piece, judged, grid, bars);
  }
  const chords = chordsByBar(chart);
  return Object.freeze(
    bars.map(({ notes, sum, weight }, index) =>
      Object.freeze({
        bar: index + 1,
        chords: Object.freeze(chords.get(index + 1) ?? []),
        notes,
        fit: weight === 0 ? null : sum / weight,
      }),
    ),
  );
}

interface BarSum {
  notes: number;
  sum: number;
  weight: number;
}

/** Gives each bar the part of a piece that sounds in it; the weight of striking goes to the first. */
function spreadPiece(
  piece: number,
  { pieces, change, weight, credit }: Judged,
  { changes, pickup, barTicks, beatTicks }: ScoringGrid,
  bars: readonly BarSum[],
): void {
  const start = Math.max(
    pieces.start[piece] as number,
    changes[change[piece] as number]?.start ?? 0,
  );
  const end = Math.max(pieces.end[piece] as number, start + 1);
  let left = weight[piece] as number;
  for (let at = Math.floor((start - pickup) / barTicks); left > 0; at += 1) {
    const bar = bars[at];
    if (bar === undefined) return;
    const beyond = Math.max(0, end - (pickup + (at + 1) * barTicks)) / beatTicks;
    bar.notes += 1;
    bar.sum += (left - beyond) * (credit[piece] as number);
    bar.weight += left - beyond;
    left = beyond;
  }
}

function chordsByBar({ spans }: Chart): ReadonlyMap<number, readonly string[]> {
  const chords = new Map<number, string[]>();
  for (const { bar, chord } of spans) {
    const symbols = chords.get(bar) ?? [];
    if (chord !== null) symbols.push(chord.symbol);
    chords.set(bar, symbols);
  }
  return chords;
}

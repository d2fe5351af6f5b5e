import type { Chart } from '@reedplate/form';
import type { ScoringGrid } from './grid.js';
import type { Judged } from './judge.js';
import { CLASS } from './note-class.js';
import type { BarScore } from './score-types.js';

/** How each bar of a chart is followed; a push counts in the bar of the chord it belongs to. */
export function scoreBars(judged: Judged, chart: Chart, grid: ScoringGrid): readonly BarScore[] {
  const sums = emptySums(chart.bars);
  for (let piece = 0; piece < judged.pieces.count; piece += 1) {
    if (judged.class[piece] !== CLASS.unjudged) spreadPiece(piece, judged, grid, sums);
  }
  const chords = chordsByBar(chart);
  const bars: BarScore[] = [];
  for (let at = 0; at < chart.bars; at += 1) {
    const weight = sums.weight[at] as number;
    bars.push(
      Object.freeze({
        bar: at + 1,
        chords: chords[at] ?? NO_CHORDS,
        notes: sums.notes[at] as number,
        fit: weight === 0 ? null : (sums.credit[at] as number) / weight,
      }),
    );
  }
  return Object.freeze(bars);
}

/** Sums by bar, from 0. */
interface BarSums {
  readonly notes: Int32Array;
  readonly credit: Float64Array;
  readonly weight: Float64Array;
}

function emptySums(bars: number): BarSums {
  return {
    notes: new Int32Array(bars),
    credit: new Float64Array(bars),
    weight: new Float64Array(bars),
  };
}

/** Gives each bar the part of a piece that sounds in it; the weight of striking goes to the first. */
function spreadPiece(
  piece: number,
  { pieces, change, weight, credit }: Judged,
  { starts, pickup, barTicks, beatTicks }: ScoringGrid,
  sums: BarSums,
): void {
  const begun = pieces.start[piece] as number;
  const start = Math.max(begun, starts[change[piece] as number] as number);
  const end = Math.max(pieces.end[piece] as number, start + 1);
  const worth = credit[piece] as number;
  let left = weight[piece] as number;
  for (let at = Math.floor((start - pickup) / barTicks); left > 0; at += 1) {
    if (at < 0 || at >= sums.notes.length) return;
    const beyond = Math.max(0, end - (pickup + (at + 1) * barTicks)) / beatTicks;
    sums.notes[at] = (sums.notes[at] as number) + 1;
    sums.credit[at] = (sums.credit[at] as number) + (left - beyond) * worth;
    sums.weight[at] = (sums.weight[at] as number) + (left - beyond);
    left = beyond;
  }
}

/** Symbols of the chords of each bar, from 0; bars with one chord share their lists. */
function chordsByBar({ spans, bars }: Chart): readonly (readonly string[])[] {
  const alone = new Map<string, readonly string[]>();
  const chords = new Array<readonly string[]>(bars).fill(NO_CHORDS);
  for (const { bar, chord } of spans) {
    if (chord === null) continue;
    const before = chords[bar - 1];
    if (before === undefined) continue;
    const { symbol } = chord;
    const one = alone.get(symbol) ?? Object.freeze([symbol]);
    alone.set(symbol, one);
    chords[bar - 1] = before.length === 0 ? one : Object.freeze([...before, symbol]);
  }
  return chords;
}

const NO_CHORDS: readonly string[] = Object.freeze([]);

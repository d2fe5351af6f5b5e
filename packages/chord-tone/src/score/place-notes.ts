import { undoSwing } from './align.js';
import type { ScoringGrid } from './grid.js';
import { metricalStrength } from './metrical.js';
import type { Heard } from './sounded.js';

/** A note with its place in the bar and among the others: what holds whatever the chords are. */
export interface Placed extends Heard {
  /** Its place among the notes. */
  readonly place: number;
  /** Felt beats from bar 1, swing undone. */
  readonly beats: number;
  /** Strength of its place in the bar, 0 to 1. */
  readonly metre: number;
  /** Place of the first of the notes that are struck together with it. */
  readonly group: number;
}

type BeatGrid = Pick<ScoringGrid, 'pickup' | 'barTicks' | 'beatTicks'>;

/** Onsets no further apart than this, in felt beats, are struck together. */
const TOGETHER = 1 / 16;

/** Places notes in their bars, and groups those that are struck together. */
export function placeNotes(
  notes: readonly Heard[],
  grid: BeatGrid,
  swing: number,
): readonly Placed[] {
  const placed = new Array<Placed>(notes.length);
  for (let last = notes.length; last > 0; ) {
    const group = firstStruckWith(notes, last - 1, TOGETHER * grid.beatTicks);
    for (let place = group; place < last; place += 1) {
      const { index, pitch, start, end } = notes[place] as Heard;
      const beats = undoSwing((start - grid.pickup) / grid.beatTicks, swing);
      const metre = strengthAt(start, grid, swing);
      placed[place] = { index, pitch, start, end, place, beats, metre, group };
    }
    last = group;
  }
  return placed;
}

/** First of the notes struck together with one, looking back from it. */
function firstStruckWith(notes: readonly Heard[], place: number, together: number): number {
  const onset = (notes[place] as Heard).start;
  let low = place;
  while (low > 0 && onset - (notes[low - 1] as Heard).start <= together) low -= 1;
  return low;
}

/** Metrical strength of where the part of a note begins: held into a chord, it begins by the clock. */
export function metreOf(
  { held, start, note }: { readonly held: boolean; readonly start: number; readonly note: Placed },
  grid: BeatGrid,
): number {
  return held ? strengthAt(start, grid, 1) : note.metre;
}

/** Metrical strength of a tick, counted within its bar so that every chorus gives the same. */
function strengthAt(
  tick: number,
  { pickup, barTicks, beatTicks }: BeatGrid,
  swing: number,
): number {
  const fromBarOne = tick - pickup;
  const inBar = fromBarOne - Math.floor(fromBarOne / barTicks) * barTicks;
  return metricalStrength(undoSwing(inBar / beatTicks, swing), barTicks / beatTicks);
}

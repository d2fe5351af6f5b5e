import type { TimedNote } from '@reedplate/line';
import { type Chroma, CLASSES, chromaOfRows } from './chroma.js';

/** Highest note that a bass plays. */
const HIGHEST_BASS = 57;

/** The pitch classes of notes, in cells of some ticks: all of them as treble, the lowest of each cell as bass. */
export function chromaOfNotes(
  notes: readonly TimedNote[],
  { end, cell }: { readonly end: number; readonly cell: number },
): Chroma {
  const cells = Math.ceil(end / cell);
  const rows = new Float64Array(cells * CLASSES);
  const lowest = new Float64Array(cells).fill(HIGHEST_BASS + 1);
  for (const { start, duration, pitch } of notes) {
    const [from, to] = [Math.floor(start / cell), Math.ceil((start + duration) / cell)];
    for (let at = from; at < to; at += 1) {
      const within = Math.min(start + duration, (at + 1) * cell) - Math.max(start, at * cell);
      const place = at * CLASSES + (pitch % 12);
      rows[place] = (rows[place] as number) + within / cell;
      if (within > cell / 2) lowest[at] = Math.min(lowest[at] as number, pitch);
    }
  }
  for (const [at, pitch] of lowest.entries())
    if (pitch <= HIGHEST_BASS) rows[at * CLASSES + 12 + (pitch % 12)] = 1;
  return chromaOfRows(rows, cell, 0);
}

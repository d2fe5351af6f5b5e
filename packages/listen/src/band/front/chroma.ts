import { median } from '../../median.js';
import type { Peaks } from './peaks.js';

/** How strongly each pitch class sounds: twelve of the treble, then twelve of the bass. */
export const CLASSES = 24;

/** Pitch classes of a sound, added up from its beginning, so that any stretch is one difference. */
export interface Chroma {
  /**
   * Adds to `out` what sounds from one second to another: of each moment how its pitch classes stand out from their
   * mean, brought to one size, so that loud moments weigh no more than others and silence nothing.
   */
  readonly between: (from: number, to: number, out: Float64Array) => void;
}

/** Below this share of the usual strength a moment says little. */
const QUIET = 0.3;

/** Pitches where the treble sets in and is full, where it fades and is gone. */
const TREBLE = [47, 54, 84, 97] as const;
const BASS = [24, 28, 47, 56] as const;

/** The pitch classes of a sound that is tuned so many semitones above an A4 of 440 hertz. */
export function chromaOf(peaks: Peaks, tuning: number): Chroma {
  const rows = new Float64Array(peaks.moments * CLASSES);
  for (let moment = 0; moment < peaks.moments; moment += 1) {
    addPeaks(peaks, moment, tuning, rows.subarray(moment * CLASSES, (moment + 1) * CLASSES));
  }
  return chromaOfRows(rows, peaks.hop, 0.5);
}

/**
 * Adds up what sounds in moments that follow one another.
 *
 * @param middle where within its moment a row was taken: 0.5 where moment 0 begins half a hop before the sound
 */
export function chromaOfRows(rows: Float64Array, hop: number, middle: number): Chroma {
  const moments = rows.length / CLASSES;
  even(rows, 0);
  even(rows, 12);
  const sums = new Float64Array((moments + 1) * CLASSES);
  for (let at = 0; at < rows.length; at += 1)
    sums[at + CLASSES] = (sums[at] as number) + hop * (rows[at] as number);
  return {
    between: (from, to, out) => {
      addSum(sums, to / hop + middle, 1, out);
      addSum(sums, from / hop + middle, -1, out);
    },
  };
}

function addPeaks(
  { first, pitches, strengths }: Peaks,
  moment: number,
  tuning: number,
  row: Float64Array,
): void {
  const end = first[moment + 1] as number;
  for (let at = first[moment] as number; at < end; at += 1) {
    const pitch = (pitches[at] as number) - tuning;
    const near = Math.round(pitch);
    const weight = (strengths[at] as number) * Math.cos(Math.PI * (pitch - near));
    const place = ((near % 12) + 12) % 12;
    const [treble, bass] = [within(TREBLE, pitch), within(BASS, pitch)];
    row[place] = (row[place] as number) + weight * treble;
    row[12 + place] = (row[12 + place] as number) + weight * bass;
  }
}

/** From 0 to 1: how far a pitch is within a range with soft edges. */
function within(edges: readonly [number, number, number, number], pitch: number): number {
  const [from, full, fades, to] = edges;
  return Math.max(0, Math.min(1, (pitch - from) / (full - from), (to - pitch) / (to - fades)));
}

function addSum(sums: Float64Array, place: number, sign: number, out: Float64Array): void {
  const last = sums.length / CLASSES - 1;
  const held = Math.max(0, Math.min(last, place));
  const row = Math.min(last - 1, Math.floor(held));
  const part = held - row;
  for (let at = 0; at < CLASSES; at += 1) {
    const here = sums[row * CLASSES + at] as number;
    const next = sums[(row + 1) * CLASSES + at] as number;
    out[at] = (out[at] as number) + sign * (here + part * (next - here));
  }
}

/** Takes the mean of each moment's pitch classes away and brings them to one size, treble or bass; in place. */
function even(rows: Float64Array, from: number): void {
  const sizes: number[] = [];
  for (let row = from; row < rows.length; row += CLASSES) {
    let mean = 0;
    for (let at = row; at < row + 12; at += 1) mean += (rows[at] as number) / 12;
    let squares = 0;
    for (let at = row; at < row + 12; at += 1) {
      rows[at] = (rows[at] as number) - mean;
      squares += (rows[at] as number) ** 2;
    }
    sizes.push(Math.sqrt(squares));
  }
  const least = QUIET * (median(sizes.filter((size) => size > 0)) ?? 1);
  for (const [moment, size] of sizes.entries()) {
    const row = moment * CLASSES + from;
    for (let at = row; at < row + 12; at += 1) rows[at] = (rows[at] as number) / (size + least);
  }
}

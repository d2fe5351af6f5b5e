import { ReedplateError } from '@reedplate/pitch';
import type { ScoringGrid } from './grid.js';
import type { TakeAlignment } from './score-types.js';
import type { Heard } from './sounded.js';

/** How a line is laid on a chart. */
export interface AlignOptions {
  /**
   * By how much the line comes late as a whole (negative: early), taken off every onset: ticks,
   * milliseconds as `80ms`, which needs a tempo in the line or the chart, or `estimate`, from how the
   * onsets lie to the half beats. Default 0.
   */
  readonly latency?: number | `${number}ms` | 'estimate';
  /**
   * Long to short part of the beat as played, 1 (even) to 4; or `estimate`, from the onsets
   * between beats. Default `estimate`.
   */
  readonly swing?: number | 'estimate';
  /** Whole bars counted in before bar 1, taken off; default what the line says, or none. */
  readonly countIn?: number;
}

/** Most bars that a count-in has: as many as a line may say. */
const LONGEST_COUNT_IN = 64;

/** Bars counted in, from 0 to 64. */
export function requireCountIn(value: unknown): number {
  if (
    typeof value === 'number' &&
    Number.isInteger(value) &&
    value >= 0 &&
    value <= LONGEST_COUNT_IN
  ) {
    return value;
  }
  throw outOfRange(value, `whole bars of count-in, from 0 to ${LONGEST_COUNT_IN}`);
}

/** Where bar 1 begins and how long a felt beat is. */
export type BeatGrid = Pick<ScoringGrid, 'pickup' | 'beatTicks'>;

const SMALLEST_SWING = 1;
const LARGEST_SWING = 4;

/** Checks what was asked and estimates the rest, from notes with their ties joined. */
export function alignLine(
  notes: readonly Heard[],
  grid: BeatGrid,
  { latency = 0, swing = 'estimate' }: AlignOptions,
  tempo?: number,
): Pick<TakeAlignment, 'latency' | 'swing'> {
  const taken =
    latency === 'estimate' ? estimateLatency(notes, grid) : readLatency(latency, grid, tempo);
  const ratio = swing === 'estimate' ? estimateSwing(notes, grid, taken) : requireSwing(swing);
  return Object.freeze({ latency: taken, swing: ratio });
}

/**
 * A time in felt beats with the swing undone: the off-beat eighth as played comes to lie on the
 * half beat, times between are stretched in proportion.
 */
export function undoSwing(beats: number, swing: number): number {
  if (swing === 1) return beats;
  const whole = Math.floor(beats);
  const within = beats - whole;
  const long = swing / (swing + 1);
  return whole + (within < long ? within / (2 * long) : 0.5 + (within - long) / (2 * (1 - long)));
}

/** Fewest onsets that an estimate rests on. Design choice, no source. */
const ENOUGH = 4;

/** The middle (median) of how late the onsets are against the nearest half beat. */
function estimateLatency(notes: readonly Heard[], { pickup, beatTicks }: BeatGrid): number {
  const half = beatTicks / 2;
  const early = half / 2;
  const counts = countOnsets(notes, pickup - early, half);
  return notes.length < ENOUGH ? 0 : Math.round(medianOf(counts, 0, notes.length) - early);
}

/** Onsets between beats that may be off-beat eighths: from a little early to 2.6:1, in beats. */
const OFF_BEATS = { after: 0.45, before: 0.72 } as const;

/** Closer to even than a player can be heard to swing. Design choice, no source. */
const LEAST_SWING = 1.15;

/**
 * Where the onsets near the middle of the beat lie (median): between an even eighth and the 3.5:1
 * that Friberg and Sundström (2002) measured at slow tempi.
 */
function estimateSwing(
  notes: readonly Heard[],
  { pickup, beatTicks }: BeatGrid,
  latency: number,
): number {
  const counts = countOnsets(notes, pickup + latency, beatTicks);
  const from = Math.floor(OFF_BEATS.after * beatTicks) + 1;
  const past = Math.ceil(OFF_BEATS.before * beatTicks);
  const found = sumOf(counts, from, past);
  if (found < ENOUGH) return 1;
  const middle = medianOf(counts, from, found) / beatTicks;
  const ratio = middle / (1 - middle);
  return ratio < LEAST_SWING ? 1 : Math.round(ratio * 100) / 100;
}

/** How many onsets lie on each tick of a period that begins at an origin. */
function countOnsets(notes: readonly Heard[], origin: number, period: number): Uint32Array {
  const counts = new Uint32Array(period);
  for (const { start } of notes) {
    const from = start - origin;
    const tick = from - Math.floor(from / period) * period;
    counts[tick] = (counts[tick] as number) + 1;
  }
  return counts;
}

function sumOf(counts: Uint32Array, from: number, past: number): number {
  let sum = 0;
  for (let tick = from; tick < past; tick += 1) sum += counts[tick] as number;
  return sum;
}

/** The median of so many counted ticks: found without sorting, so that it stays linear. */
function medianOf(counts: Uint32Array, from: number, total: number): number {
  const lower = tickOf(counts, from, (total - 1) >> 1);
  return (lower + tickOf(counts, from, total >> 1)) / 2;
}

/** The tick of the counted onset that has so many before it. */
function tickOf(counts: Uint32Array, from: number, before: number): number {
  let tick = from;
  for (let seen = counts[tick] as number; seen <= before; seen += counts[tick] as number) tick += 1;
  return tick;
}

/** Ticks of a latency in ticks or milliseconds. */
function readLatency(value: unknown, { beatTicks }: BeatGrid, tempo: number | undefined): number {
  if (typeof value === 'number' && Number.isSafeInteger(value)) return value;
  const [, milliseconds] = /^(-?\d{1,6}(?:\.\d{1,6})?)ms$/u.exec(String(value)) ?? [];
  if (milliseconds === undefined) {
    throw outOfRange(value, 'latency in whole ticks, in milliseconds as 80ms, or estimate');
  }
  if (tempo === undefined) throw outOfRange(value, 'latency in ticks, where no tempo is known');
  return Math.round((Number(milliseconds) / MILLISECONDS_A_MINUTE) * tempo * beatTicks);
}

const MILLISECONDS_A_MINUTE = 60_000;

function requireSwing(value: unknown): number {
  if (typeof value === 'number' && value >= SMALLEST_SWING && value <= LARGEST_SWING) return value;
  throw outOfRange(value, `a swing ratio from ${SMALLEST_SWING} to ${LARGEST_SWING}, or estimate`);
}

function outOfRange(value: unknown, expected: string): ReedplateError {
  return new ReedplateError({ code: 'NUMBER_RANGE', value, expected });
}

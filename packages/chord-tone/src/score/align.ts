import type { Line } from '@reedplate/line';
import { ReedplateError } from '@reedplate/pitch';
import type { Alignment } from './score-types.js';

/** How a line is laid on a chart. */
export interface AlignOptions {
  /**
   * Ticks by which the line comes late as a whole (negative: early), taken off every onset; or
   * `estimate`, from how the onsets lie to the half beats. Default 0.
   */
  readonly latency?: number | 'estimate';
  /**
   * Long to short part of the beat as played, 1 (even) to 4; or `estimate`, from the onsets
   * between beats. Default `estimate`.
   */
  readonly swing?: number | 'estimate';
}

/** Times of a line on the beat grid, to align by. */
export interface Onsets {
  readonly line: Line;
  /** Ticks from the beginning of the line to the first beat of bar 1. */
  readonly pickup: number;
  readonly beatTicks: number;
}

const SMALLEST_SWING = 1;
const LARGEST_SWING = 4;

/** Checks what was asked and estimates the rest. */
export function alignLine(
  onsets: Onsets,
  { latency = 0, swing = 'estimate' }: AlignOptions,
): Alignment {
  const taken = latency === 'estimate' ? estimateLatency(onsets) : requireLatency(latency);
  const ratio = swing === 'estimate' ? estimateSwing(onsets, taken) : requireSwing(swing);
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
function estimateLatency({ line, pickup, beatTicks }: Onsets): number {
  const half = beatTicks / 2;
  const late = line.notes.map(({ start }) => {
    const from = start - pickup;
    return from - Math.round(from / half) * half;
  });
  return late.length < ENOUGH ? 0 : Math.round(median(late));
}

/**
 * Where the onsets near the middle of the beat lie (median): between an even eighth and the 3.5:1
 * that Friberg and Sundström (2002) measured at slow tempi.
 */
function estimateSwing({ line, pickup, beatTicks }: Onsets, latency: number): number {
  const offBeats: number[] = [];
  for (const { start } of line.notes) {
    const beats = (start - pickup - latency) / beatTicks;
    const within = beats - Math.floor(beats);
    if (within > 0.45 && within < 0.72) offBeats.push(within);
  }
  if (offBeats.length < ENOUGH) return 1;
  const middle = median(offBeats);
  const ratio = middle / (1 - middle);
  // Closer to even than a player can be heard to swing: leave such a line as it is.
  return ratio < 1.15 ? 1 : Math.round(ratio * 100) / 100;
}

function median(values: number[]): number {
  const sorted = values.sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const high = sorted[middle] ?? 0;
  return sorted.length % 2 === 1 ? high : (high + (sorted[middle - 1] ?? high)) / 2;
}

function requireLatency(value: unknown): number {
  if (typeof value === 'number' && Number.isSafeInteger(value)) return value;
  throw outOfRange(value, 'latency in whole ticks, or estimate');
}

function requireSwing(value: unknown): number {
  if (typeof value === 'number' && value >= SMALLEST_SWING && value <= LARGEST_SWING) return value;
  throw outOfRange(value, `a swing ratio from ${SMALLEST_SWING} to ${LARGEST_SWING}, or estimate`);
}

function outOfRange(value: unknown, expected: string): ReedplateError {
  return new ReedplateError({ code: 'NUMBER_RANGE', value, expected });
}

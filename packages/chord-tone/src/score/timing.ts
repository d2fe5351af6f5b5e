import { itemAt } from '@reedplate/pitch';
import type { ScoringGrid } from './grid.js';
import type { Placed } from './place-notes.js';

/** How late the onsets of a bar lie. */
export interface BarTiming {
  readonly bar: number;
  /** Felt beats that its onsets come late in the middle (median); negative: early. */
  readonly late: number;
}

/** How the onsets lie to the beat, swing undone; all in felt beats. */
export interface TakeTiming {
  /** Mean distance of onsets from the nearest quarter or third of the beat; null without an onset. */
  readonly loose: number | null;
  /** How late the take lies as a whole (median); negative: early. */
  readonly late: number;
  /** By how much later it comes at the end than at the beginning; negative: it rushes. */
  readonly drift: number;
  /** Long to short part of the beat as played: 1 is even, 2 a triplet shuffle. */
  readonly swing: number;
  /** Bars with an onset near a beat or its half, from the first. */
  readonly bars: readonly BarTiming[];
}

/** Measures the timing of placed notes. */
export function timingOf(notes: readonly Placed[], grid: ScoringGrid, swing: number): TakeTiming {
  const bars = lateByBar(notes, grid);
  const lates = bars.map(({ late }) => late);
  return Object.freeze({
    loose: looseness(notes),
    late: medianOf(lates),
    drift: driftOf(lates),
    swing,
    bars: Object.freeze(bars),
  });
}

/** Players aim at quarters and thirds of the beat: halves are among the quarters. */
const PARTS_AIMED_AT = [4, 3] as const;

/** The places that they make of a beat. */
const AIMED_AT = [0, 1 / 4, 1 / 3, 1 / 2, 2 / 3, 3 / 4, 1] as const;

/** Mean distance to the nearest of them of a time drawn at random: a quarter of each gap squared, summed. */
export const LOOSE_AT_RANDOM: number = /* @__PURE__ */ (() =>
  AIMED_AT.slice(1).reduce(
    (sum, place, index) => sum + (place - itemAt(AIMED_AT, index)) ** 2 / 4,
    0,
  ))();

/** Notes of this length and more tell of time, in felt beats: a grace note has its own. */
const TELLING = 1 / 8;

function looseness(notes: readonly Placed[]): number | null {
  let distance = 0;
  for (const { beats } of notes) distance += distanceFromGrid(beats);
  return notes.length === 0 ? null : distance / notes.length;
}

/** Distance of a time from the nearest place that players aim at, in felt beats. */
export function distanceFromGrid(beats: number): number {
  const [quarters, thirds] = PARTS_AIMED_AT;
  return Math.min(distanceFrom(beats, quarters), distanceFrom(beats, thirds));
}

/** Distance of a time from the nearest of so many equal parts of the beat, in beats. */
function distanceFrom(beats: number, parts: number): number {
  return Math.abs(beats - Math.round(beats * parts) / parts);
}

/** How late the onsets of each bar are against the nearest half beat from where the bar before was. */
function lateByBar(
  notes: readonly Placed[],
  { barTicks, beatTicks }: ScoringGrid,
): readonly BarTiming[] {
  const beatsPerBar = barTicks / beatTicks;
  const byBar = new Map<number, number[]>();
  for (const { beats, start, end } of notes) {
    if (end - start < TELLING * beatTicks) continue;
    const bar = Math.floor((beats + 1 / 4) / beatsPerBar) + 1;
    const here = byBar.get(bar);
    if (here === undefined) byBar.set(bar, [beats]);
    else here.push(beats);
  }
  let before = 0;
  return [...byBar].map(([bar, onsets]) => {
    const late = medianOf(onsets.map((beats) => lateFrom(beats, before)));
    before = late;
    return Object.freeze({ bar, late });
  });
}

/** How late a time is against the half beat that makes it come nearest to an expected lateness. */
function lateFrom(beats: number, expected: number): number {
  return beats - Math.round((beats - expected) * 2) / 2;
}

/** By how much the last third of the bars is later than the first. */
function driftOf(lates: readonly number[]): number {
  const third = Math.floor(lates.length / 3);
  if (third === 0) return 0;
  return medianOf(lates.slice(-third)) - medianOf(lates.slice(0, third));
}

function medianOf(values: readonly number[]): number {
  if (values.length === 0) return 0;
  const sorted = [...values].sort((a, b) => a - b);
  const [low, high] = [(sorted.length - 1) >> 1, sorted.length >> 1];
  return (itemAt(sorted, low) + itemAt(sorted, high)) / 2;
}

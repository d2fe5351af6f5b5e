import { type Line, requireNotes, type TimedNote } from '@reedplate/line';
import { secondsPerTick } from './line-events.js';
import { type PitchSets, setOf, startSets } from './pitch-sets.js';

/** Air is counted in steps, so many to a second of single-note playing. */
export const STEPS_PER_SECOND = 10;

/** The events of a line in figures, one entry an event: the same as `eventsOf` gives. */
export interface LineTimes extends Pick<PitchSets, 'sets' | 'setCounts'> {
  readonly count: number;
  /** Index into `sets`. */
  readonly set: readonly number[];
  /** First tick, tick at which the longest of its notes ends, and at which it is let go. */
  readonly start: readonly number[];
  readonly end: readonly number[];
  readonly letGo: readonly number[];
  /** Seconds a tick lasts. */
  readonly perTick: number;
}

/**
 * Reads the times of a line, without an object for each event.
 *
 * @throws ReedplateError `LINE_EMPTY`, `NUMBER_RANGE`
 */
export function lineTimes(line: Line, tempo?: number): LineTimes {
  const { notes } = requireNotes(line);
  const size = notes.length;
  const pitchSets = startSets();
  // Plain arrays: for a few hundred numbers they are made twice as fast as typed ones.
  const set = new Array<number>(size);
  const start = new Array<number>(size);
  const end = new Array<number>(size);
  const letGo = new Array<number>(size);
  let count = 0;
  for (let first = 0; first < size; count += 1) {
    const note = notes[first] as TimedNote;
    let last = note.start + note.duration;
    let next = first + 1;
    let following = notes[next];
    while (following?.start === note.start) {
      last = Math.max(last, note.start + following.duration);
      next += 1;
      following = notes[next];
    }
    set[count] = setOf(pitchSets, notes, first, next);
    start[count] = note.start;
    end[count] = last;
    // A note that still sounds when the next begins is let go there.
    letGo[count] = following === undefined ? last : Math.min(last, following.start);
    first = next;
  }
  const { sets, setCounts } = pitchSets;
  return { count, set, start, end, letGo, sets, setCounts, perTick: secondsPerTick(line, tempo) };
}

/** The times of the events whose set is kept, as those of a line without the others. */
export function timesWithout(times: LineTimes, isKept: (set: number) => boolean): LineTimes {
  const set = new Array<number>(times.count);
  const start = new Array<number>(times.count);
  const end = new Array<number>(times.count);
  let count = 0;
  for (let event = 0; event < times.count; event += 1) {
    if (!isKept(times.set[event] as number)) continue;
    set[count] = times.set[event] as number;
    start[count] = times.start[event] as number;
    end[count] = times.end[event] as number;
    count += 1;
  }
  const letGo = end.slice(0, count).map((last, at) => Math.min(last, start[at + 1] ?? last));
  const setCounts = times.setCounts.map((found, at) => (isKept(at) ? found : 0));
  return { ...times, count, set, start, end, letGo, setCounts };
}

/** Seconds from the onset before; from the beginning of the line for the first. */
export function secondsSince({ start, perTick }: LineTimes, event: number): number {
  const before = event === 0 ? 0 : (start[event - 1] as number);
  return ((start[event] as number) - before) * perTick;
}

/** Seconds held. */
export function secondsHeld({ start, letGo, perTick }: LineTimes, event: number): number {
  return ((letGo[event] as number) - (start[event] as number)) * perTick;
}

/** Air steps held. Counted on a grid, so that long stretches add up. */
export function stepsHeld({ start, letGo, perTick }: LineTimes, event: number): number {
  return onGrid(letGo[event] as number, perTick) - onGrid(start[event] as number, perTick);
}

/** Air steps rested before, on the same grid. */
export function stepsRested({ start, letGo, perTick }: LineTimes, event: number): number {
  const before = event === 0 ? 0 : (letGo[event - 1] as number);
  return onGrid(start[event] as number, perTick) - onGrid(before, perTick);
}

function onGrid(tick: number, perTick: number): number {
  return Math.round(tick * perTick * STEPS_PER_SECOND);
}

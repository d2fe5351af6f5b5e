import type { PitchPoint, TimedNote } from '@reedplate/line';
import { eventAt, type TimedEvent } from './track.js';

/** Range that most readers take where a file says none, and the least that is set, in semitones. */
const USUAL_RANGE = 2;
/** Steps of the wheel to each side: fourteen bits in all. */
const WHEEL = 8192;

/**
 * The bends of a part's notes: the range of the wheel, set by registered parameter 0, and its places. It
 * is at rest where a note has neither cents nor a curve. None for a part without bends.
 */
export function bendEvents(notes: readonly TimedNote[], channel: number): readonly TimedEvent[] {
  if (!notes.some(isBent)) return [];
  const range = rangeOf(notes);
  const bends = notes.flatMap((note, index) => {
    const next = notes[index + 1]?.start ?? Number.POSITIVE_INFINITY;
    // Of notes that overlap, the one that began last has the wheel.
    return wheelOf(note)
      .filter(({ at }) => at === 0 || note.start + at < next)
      .map(({ at, cents }) => {
        const value = Math.round((cents * WHEEL) / (range * 100));
        return eventAt(note.start + at, {
          type: 'pitchBend',
          channel,
          value: Math.min(WHEEL - 1, Math.max(-WHEEL, value)),
        });
      });
  });
  return [...rangeEvents(range, channel), ...bends];
}

/** Whether a note sounds beside its pitch. */
export function isBent({ cents = 0, curve = [] }: TimedNote): boolean {
  return cents !== 0 || curve.length > 0;
}

/** Whole semitones that hold every bend. */
function rangeOf(notes: readonly TimedNote[]): number {
  let most = USUAL_RANGE * 100;
  for (const { cents = 0, curve = [] } of notes) {
    for (const point of [{ cents }, ...curve]) most = Math.max(most, Math.abs(point.cents));
  }
  return Math.ceil(most / 100);
}

const PARAMETER_MSB = 101;
const PARAMETER_LSB = 100;
const DATA_MSB = 6;
const DATA_LSB = 38;
/** Says that data which follows belongs to no parameter. */
const NO_PARAMETER = 127;

function rangeEvents(range: number, channel: number): readonly TimedEvent[] {
  const settings = [
    [PARAMETER_MSB, 0],
    [PARAMETER_LSB, 0],
    [DATA_MSB, range],
    [DATA_LSB, 0],
    [PARAMETER_MSB, NO_PARAMETER],
    [PARAMETER_LSB, NO_PARAMETER],
  ] as const;
  return settings.map(([controllerType, value]) =>
    eventAt(0, { type: 'controller', channel, controllerType, value }),
  );
}

/** A step each fortieth of a quarter note is heard as a glide. */
const GLIDE_TICKS = 24;
/** Most steps from point to point, so that a file grows with its points alone. */
const MOST_STEPS = 64;

/** Where the wheel stands from moment to moment. */
function wheelOf({ curve = [], cents = 0 }: TimedNote): readonly PitchPoint[] {
  const [first] = curve;
  if (first === undefined) return [{ at: 0, cents }];
  const glides = curve.slice(1).flatMap((to, index) => stepsTo(to, curve[index] as PitchPoint));
  return [...(first.at === 0 ? [] : [{ at: 0, cents: first.cents }]), first, ...glides];
}

function stepsTo(to: PitchPoint, from: PitchPoint): readonly PitchPoint[] {
  const ticks = to.at - from.at;
  const cents = to.cents - from.cents;
  const count = Math.min(MOST_STEPS, Math.ceil(ticks / GLIDE_TICKS), Math.ceil(Math.abs(cents)));
  return Array.from({ length: Math.max(1, count) }, (_, index) => {
    const share = (index + 1) / Math.max(1, count);
    return { at: from.at + Math.round(ticks * share), cents: from.cents + cents * share };
  });
}

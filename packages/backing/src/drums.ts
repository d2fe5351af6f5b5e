import type { TimedNote } from '@reedplate/line';
import type { Beat } from './beats.js';

/** Sounds of the General MIDI drum kit: General MIDI 1, percussion key map (from memory). */
export const DRUMS = Object.freeze({
  kick: 36,
  sideStick: 37,
  snare: 38,
  crash: 49,
  ride: 51,
} as const);

/**
 * Ride on every part of the beat that the feel has, kick on the odd beats, snare on the backbeat.
 * Common practice, no source.
 */
export function drum(beats: readonly Beat[]): readonly TimedNote[] {
  return beats.flatMap(({ start, ticks, inBar }) => {
    const parts = isCompound(ticks) ? 3 : 2;
    const duration = Math.round(ticks / parts);
    const rides = Array.from({ length: parts }, (_, part) => ({
      start: start + part * duration,
      duration,
      pitch: DRUMS.ride,
    }));
    const pitch = inBar % 2 === 0 ? DRUMS.kick : DRUMS.snare;
    return [...rides, { start, duration, pitch }];
  });
}

/** Beats that divide by three, as in 12/8; halves of others are swung by the feel on output. */
function isCompound(ticks: number): boolean {
  return ticks % 720 === 0;
}

/** A click on every beat of the bars before a chart. */
export function countOff(bars: number, barTicks: number, beatTicks: number): readonly TimedNote[] {
  return Array.from({ length: (bars * barTicks) / beatTicks }, (_, at) => ({
    start: at * beatTicks,
    duration: beatTicks / 2,
    pitch: DRUMS.sideStick,
  }));
}

import { itemAt } from '@reedplate/pitch';
import type { Sound } from '../sound.js';
import { type Periodicity, pitchListener } from './candidates.js';

/** What is heard at one moment. */
export interface Frame extends Periodicity {
  /** Loudness in decibels below full scale. */
  readonly level: number;
  /** Decibels that the loudness grows by from here, where it is at its lowest for a while; else 0. */
  readonly rise: number;
}

/** Seconds from one frame to the next. */
export const HOP = 0.01;

/** Seconds that a pitch is looked for in: four periods of the lowest harps' lowest hole. */
const WINDOW = 0.046;

/** Seconds of the stretch whose loudness is taken, in the middle of the window. */
const LEVEL_WINDOW = 0.02;

/** Frames before and after a dip of the loudness: shorter than any note. */
const DIP_SPAN = 4;

/** Quieter than this is silence, whatever else is on the recording. */
const SILENCE = -80;

const UNPITCHED: Periodicity = { candidates: [], clarity: 0 };

/** The sound in frames a hundredth of a second apart. */
export function framesOf({ sampleRate, samples }: Sound): readonly Frame[] {
  const size = Math.round(WINDOW * sampleRate);
  const listen = pitchListener(size, sampleRate);
  const window = new Float32Array(size);
  const count = Math.floor(samples.length / sampleRate / HOP) + 1;
  const centres = Array.from({ length: count }, (_, at) => Math.round(at * HOP * sampleRate));
  const levels = centres.map((centre) =>
    levelAt(samples, centre, Math.round(LEVEL_WINDOW * sampleRate)),
  );
  return centres.map((centre, at) => {
    const level = itemAt(levels, at);
    take(samples, centre - (size >> 1), window);
    const heard = level < SILENCE ? UNPITCHED : listen(window);
    return { ...heard, level, rise: riseAt(levels, at) };
  });
}

/** Decibels that the loudness grows by after a dip; 0 where there is none. */
function riseAt(levels: readonly number[], at: number): number {
  const here = Math.max(SILENCE, itemAt(levels, at));
  const before = levels.slice(Math.max(0, at - DIP_SPAN), at);
  const after = levels.slice(at + 1, at + 1 + DIP_SPAN);
  if (before.some((level) => level <= here) || after.some((level) => level < here)) return 0;
  return Math.max(here, ...after) - here;
}

/** A stretch of the samples; silence before the first and after the last. */
function take(samples: Float32Array, from: number, window: Float32Array): void {
  for (let at = 0; at < window.length; at += 1) window[at] = samples[from + at] ?? 0;
}

function levelAt(samples: Float32Array, centre: number, size: number): number {
  let sum = 0;
  for (let at = centre - (size >> 1); at < centre + (size >> 1); at += 1)
    sum += (samples[at] ?? 0) ** 2;
  return Math.max(-120, 10 * Math.log10(sum / size + 1e-12));
}

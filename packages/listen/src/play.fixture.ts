import type { Sound } from './sound.js';

/** A note to be heard: seconds, a MIDI number with its fraction, and how it moves. */
export interface PlayedNote {
  readonly start: number;
  readonly duration: number;
  readonly pitch: number;
  /** Cents above the pitch, so many seconds after it begins; default none. */
  readonly cents?: (seconds: number) => number;
}

const HARMONICS = [1, 0.6, 0.5, 0.3, 0.2] as const;
const EDGE = 0.02;

/** Reeds as plain as can be: five harmonics, a soft begin and end. */
export function play(
  notes: readonly PlayedNote[],
  { sampleRate = 22_050, gain = 0.2, reference = 440, seconds = 2 } = {},
): Sound {
  const samples = new Float32Array(Math.round(seconds * sampleRate));
  for (const { start, duration, pitch, cents = () => 0 } of notes) {
    let phase = 0;
    const from = Math.round(start * sampleRate);
    for (let at = 0; at < duration * sampleRate && from + at < samples.length; at += 1) {
      const now = at / sampleRate;
      phase += (2 * Math.PI * reference * 2 ** ((pitch - 69 + cents(now) / 100) / 12)) / sampleRate;
      const swell = Math.min(1, now / EDGE, (duration - now) / EDGE);
      const sum = HARMONICS.reduce(
        (all, strength, index) => all + strength * Math.sin((index + 1) * phase),
        0,
      );
      samples[from + at] = (samples[from + at] ?? 0) + gain * swell * sum;
    }
  }
  return { sampleRate, samples };
}

import { frequency } from '@reedplate/pitch';
import { sineOfTurn } from './sine.js';
import { fadeOut, keptEachSample } from './strike-sound.js';
import type { ToneSound } from './tone-sounds.js';

/** Share of the sample rate above which a harmonic would fold back. */
const HIGHEST_SHARE = 0.45;

/** A note held for some seconds, as loud as may be: samples within -1 and 1. */
export function toneSound(
  sound: ToneSound,
  { pitch, duration }: { readonly pitch: number; readonly duration: number },
  sampleRate: number,
): Float32Array {
  const { harmonics, attack, decay, release } = sound;
  const samples = new Float32Array(Math.max(1, Math.round((duration + release) * sampleRate)));
  const hertz = frequency(pitch);
  for (const [at, level] of harmonics.entries()) {
    const partial = at + 1;
    if (partial * hertz > HIGHEST_SHARE * sampleRate) break;
    addHarmonic(samples, level, (partial * hertz) / sampleRate, {
      keep: keptEachSample(decay / partial, sampleRate),
    });
  }
  swellIn(samples, Math.round(attack * sampleRate));
  fadeOut(samples, sampleRate, release);
  return samples;
}

function addHarmonic(
  samples: Float32Array,
  level: number,
  step: number,
  { keep }: { readonly keep: number },
): void {
  let loudness = level;
  let turn = 0;
  for (let at = 0; at < samples.length; at += 1) {
    samples[at] = (samples[at] as number) + loudness * sineOfTurn(turn);
    turn = (turn + step) % 1;
    loudness *= keep;
  }
}

function swellIn(samples: Float32Array, length: number): void {
  for (let at = 0; at < Math.min(length, samples.length); at += 1) {
    samples[at] = ((samples[at] as number) * at) / length;
  }
}

import { randomFrom } from '@reedplate/pitch';
import type { DrumNoise, DrumSound, DrumTone } from './drum-sounds.js';
import { sineOfTurn } from './sine.js';

/** Any number: a drum has the same noise each time. */
const SEED = 11;
/** Seconds in which the end of a sound fades, so that it does not click. */
const FADE = 0.004;

/** A drum that is struck as loud as may be: samples within -1 and 1. */
export function strikeSound(
  { seconds, tones, noise }: DrumSound,
  sampleRate: number,
): Float32Array {
  const samples = new Float32Array(Math.round(seconds * sampleRate));
  for (const tone of tones) addTone(samples, tone, sampleRate);
  if (noise !== undefined) addNoise(samples, noise, sampleRate);
  fadeOut(samples, sampleRate);
  return samples;
}

function addTone(samples: Float32Array, tone: DrumTone, sampleRate: number): void {
  const { level, from, to, fall, decay } = tone;
  const keep = keptEachSample(decay, sampleRate);
  const keepFall = keptEachSample(fall, sampleRate);
  let loudness = level;
  let above = from - to;
  let turn = 0;
  for (let at = 0; at < samples.length; at += 1) {
    samples[at] = (samples[at] as number) + loudness * sineOfTurn(turn);
    turn = (turn + (to + above) / sampleRate) % 1;
    loudness *= keep;
    above *= keepFall;
  }
}

/** White noise through two filters of one pole each. */
function addNoise(samples: Float32Array, noise: DrumNoise, sampleRate: number): void {
  const random = randomFrom(SEED);
  const keep = keptEachSample(noise.decay, sampleRate);
  const pass = 1 / (1 + (2 * Math.PI * noise.above) / sampleRate);
  let loudness = noise.level;
  let [white, once, twice] = [0, 0, 0];
  for (let at = 0; at < samples.length; at += 1) {
    const next = 2 * random() - 1;
    const filtered = pass * (once + next - white);
    twice = pass * (twice + filtered - once);
    white = next;
    once = filtered;
    samples[at] = (samples[at] as number) + loudness * twice;
    loudness *= keep;
  }
}

/** What is left after a sample of what dies away to a third or so in some seconds. */
export function keptEachSample(seconds: number, sampleRate: number): number {
  return 1 - 1 / (1 + seconds * sampleRate);
}

/** Lets the end of a sound go to silence. */
export function fadeOut(samples: Float32Array, sampleRate: number, seconds = FADE): void {
  const length = Math.min(samples.length, Math.round(seconds * sampleRate));
  for (let at = 0; at < length; at += 1) {
    const place = samples.length - 1 - at;
    samples[place] = ((samples[place] as number) * at) / length;
  }
}

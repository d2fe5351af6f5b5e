import { type Random, randomFrom } from '@reedplate/pitch';
import type { Sound } from '../src/sound.js';

/** A recording that is worse than it was. */
export type Spoil = (sound: Sound) => Sound;

/** Pink noise so many decibels below the sound: three filtered whites (Kellet's sum; value from memory). */
export const withNoise =
  (decibels: number): Spoil =>
  ({ sampleRate, samples }) => {
    const noise = pinkNoise(samples.length, randomFrom(7));
    const gain = (powerOf(samples) / powerOf(noise)) ** 0.5 * 10 ** (-decibels / 20);
    return { sampleRate, samples: samples.map((sample, at) => sample + gain * (noise[at] ?? 0)) };
  };

function pinkNoise(length: number, random: Random): Float32Array {
  const noise = new Float32Array(length);
  let [a, b, c] = [0, 0, 0];
  for (let at = 0; at < length; at += 1) {
    const white = 2 * random() - 1;
    a = 0.99765 * a + 0.099046 * white;
    b = 0.963 * b + 0.2965164 * white;
    c = 0.57 * c + 1.0526913 * white;
    noise[at] = a + b + c + 0.1848 * white;
  }
  return noise;
}

function powerOf(samples: Float32Array): number {
  let sum = 0;
  for (const sample of samples) sum += sample * sample;
  return sum / samples.length;
}

/** A room: echoes that die away within a second, some 10 decibels below the sound. */
export const inRoom: Spoil = ({ sampleRate, samples }) => {
  const random = randomFrom(3);
  const echoes = Array.from({ length: 60 }, () => {
    const seconds = 0.01 + 0.7 * random();
    return {
      delay: Math.round(seconds * sampleRate),
      gain: 0.12 * Math.exp(-5 * seconds) * (random() < 0.5 ? -1 : 1),
    };
  });
  const wet = samples.slice();
  for (const { delay, gain } of echoes) {
    for (let at = delay; at < wet.length; at += 1)
      wet[at] = (wet[at] ?? 0) + gain * (samples[at - delay] ?? 0);
  }
  return { sampleRate, samples: wet };
};

/** A telephone: nothing below 300 and above 3400 hertz, and loud tops rounded. */
export const onPhone: Spoil = ({ sampleRate, samples }) => {
  const high = firstOrder(samples, 300, sampleRate, 'high');
  const twice = firstOrder(high, 300, sampleRate, 'high');
  const low = firstOrder(firstOrder(twice, 3400, sampleRate, 'low'), 3400, sampleRate, 'low');
  return { sampleRate, samples: low.map((sample) => Math.tanh(6 * sample) / 6) };
};

function firstOrder(
  samples: Float32Array,
  hertz: number,
  rate: number,
  keep: 'low' | 'high',
): Float32Array {
  const share = 1 - Math.exp((-2 * Math.PI * hertz) / rate);
  let below = 0;
  return samples.map((sample) => {
    below += share * (sample - below);
    return keep === 'low' ? below : sample - below;
  });
}

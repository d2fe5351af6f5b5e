import { itemAt } from '@reedplate/pitch';
import type { Sound } from '../../sound.js';

/** Samples a second that chords and drums are told by; what comes in is brought to this or somewhat more. */
const ENOUGH = 11_000;

/** Samples on either side that a sample of the slower sound is made of, a step of the slower sound. */
const REACH = 8;

/** The sound with fewer samples a second: what lies above half of them is taken away before. */
export function decimate({ sampleRate, samples }: Sound): Sound {
  const step = Math.max(1, Math.floor(sampleRate / ENOUGH));
  if (step === 1) return { sampleRate, samples };
  const kernel = lowPass(step);
  const half = (kernel.length - 1) / 2;
  const slower = new Float32Array(Math.floor(samples.length / step));
  for (let at = 0; at < slower.length; at += 1) {
    const from = at * step - half;
    const first = Math.max(0, -from);
    const last = Math.min(kernel.length, samples.length - from);
    let sum = 0;
    for (let tap = first; tap < last; tap += 1)
      sum += (kernel[tap] as number) * (samples[from + tap] as number);
    slower[at] = sum;
  }
  return { sampleRate: sampleRate / step, samples: slower };
}

/** A windowed sine over its argument, whose sum is 1. */
function lowPass(step: number): Float64Array {
  const half = REACH * step;
  const cut = 0.9 / step;
  const taps = Float64Array.from({ length: 2 * half + 1 }, (_, at) => {
    const x = at - half;
    const window = 0.5 + 0.5 * Math.cos((Math.PI * x) / (half + 1));
    return window * (x === 0 ? cut : Math.sin(Math.PI * cut * x) / (Math.PI * x));
  });
  const sum = taps.reduce((all, tap) => all + tap, 0);
  return taps.map((_, at) => itemAt(taps, at) / sum);
}

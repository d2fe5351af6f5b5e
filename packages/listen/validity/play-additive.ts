import type { NoteInSeconds } from '@reedplate/line';
import { type Random, randomFrom } from '@reedplate/pitch';
import type { Sound } from '../src/sound.js';

export const RATE = 44_100;

/** Strength of each harmonic of a reed, the first first: bright, with a strong second and third. */
const HARMONICS = [1, 0.8, 0.7, 0.35, 0.3, 0.2, 0.12, 0.1, 0.06, 0.05] as const;
const ATTACK = 0.03;
const RELEASE = 0.025;
const BREATH = 0.02;

/** A reed of our own making: harmonics that set in one after another, breath, and a soft begin and end. */
export function playAdditive(notes: readonly NoteInSeconds[], seconds: number, seed = 1): Sound {
  const samples = new Float32Array(Math.ceil(seconds * RATE));
  const random = randomFrom(seed);
  for (const note of notes) addNote(samples, note, random);
  return { sampleRate: RATE, samples };
}

function addNote(samples: Float32Array, note: NoteInSeconds, random: Random): void {
  const { start, duration, pitch } = note;
  const from = Math.round(start * RATE);
  const count = Math.round((duration + RELEASE) * RATE);
  const loud = 0.12 + 0.08 * random();
  let phase = 0;
  for (let at = 0; at < count && from + at < samples.length; at += 1) {
    const seconds = at / RATE;
    const hertz = 440 * 2 ** ((pitch - 69 + centsOf(note, seconds) / 100) / 12);
    phase += (2 * Math.PI * hertz) / RATE;
    const swell = Math.min(1, seconds / ATTACK, (duration + RELEASE - seconds) / RELEASE);
    let sum = BREATH * (2 * random() - 1);
    for (const [index, strength] of HARMONICS.entries()) {
      const times = index + 1;
      if (hertz * times > RATE / 2.2) break;
      sum += strength * swell ** (1 + 0.3 * index) * Math.sin(times * phase);
    }
    samples[from + at] = (samples[from + at] ?? 0) + loud * sum * Math.max(0, swell);
  }
}

function centsOf({ curve, cents = 0 }: NoteInSeconds, seconds: number): number {
  if (curve === undefined) return cents;
  return curve[Math.min(curve.length - 1, Math.floor(seconds * 100))]?.cents ?? cents;
}

import { pitchOfHertz } from '../../pitch-of-hertz.js';
import type { Sound } from '../../sound.js';
import { spectrumReader } from './spectrum.js';

/** Tones of a sound from moment to moment: flat lists, those of a moment from `first[moment]` on. */
export interface Peaks {
  /** Seconds from one moment to the next. */
  readonly hop: number;
  readonly moments: number;
  /** Where the peaks of each moment begin, and where the last ends. */
  readonly first: readonly number[];
  /** MIDI numbers with their fractions, for an A4 of 440 hertz. */
  readonly pitches: readonly number[];
  /** Square roots of how far each stands out of what is around it, so that soft tones count beside loud ones. */
  readonly strengths: readonly number[];
}

/** Seconds of a window: long enough to part neighbouring semitones of a bass. */
const WINDOW = 0.37;
const HOP = 0.05;
const LOWEST = 36;
const HIGHEST = 2300;

/** Hertz on either side that are what is around a tone, and their share of its frequency higher up. */
const AROUND = 60;
const AROUND_SHARE = 0.12;

/** How often a tone must be as strong as what is around it. */
const STANDS_OUT = 1.6;

/** The tones that stand out in a sound. */
export function peaksOf({ sampleRate, samples }: Sound): Peaks {
  const { read, step } = spectrumReader(sampleRate, { seconds: WINDOW, highest: HIGHEST * 1.15 });
  const moments = Math.floor(samples.length / sampleRate / HOP) + 1;
  const first: number[] = [0];
  const pitches: number[] = [];
  const strengths: number[] = [];
  const sums = new Float64Array(Math.ceil((HIGHEST * 1.15) / step) + 3);
  for (let moment = 0; moment < moments; moment += 1) {
    const spectrum = read(samples, Math.round(moment * HOP * sampleRate));
    for (let bin = 0; bin < spectrum.length; bin += 1)
      sums[bin + 1] = (sums[bin] as number) + (spectrum[bin] as number);
    const last = Math.min(spectrum.length - 2, Math.floor(HIGHEST / step));
    for (let bin = Math.ceil(LOWEST / step); bin <= last; bin += 1) {
      const here = spectrum[bin] as number;
      const [below, above] = [spectrum[bin - 1] as number, spectrum[bin + 1] as number];
      if (here <= below || here < above) continue;
      const wide = Math.ceil(Math.max(AROUND, AROUND_SHARE * bin * step) / step);
      const [from, to] = [Math.max(0, bin - wide), Math.min(spectrum.length, bin + wide + 1)];
      const around = ((sums[to] as number) - (sums[from] as number)) / (to - from);
      if (here < STANDS_OUT * around) continue;
      pitches.push(pitchOfHertz((bin + topBetween(below, here, above)) * step));
      strengths.push(here - around);
    }
    takeHarmonicsAway(pitches, strengths, first.at(-1) as number);
    first.push(pitches.length);
  }
  return { hop: HOP, moments, first, pitches, strengths };
}

/** Semitones of the harmonics that are heard as another tone: the third, the fifth and the seventh. */
const HARMONICS = [19.02, 27.86, 33.69] as const;

/** How strong a harmonic is beside its fundamental, at the most that is taken for one. */
const HARMONIC_STRENGTH = 1;
const SAME_PITCH = 0.35;

/**
 * Takes off the tones of a moment, those from `from` on, what the harmonics of lower ones explain, and takes square
 * roots: a low root sounds its fifth and its major third, which would make a minor chord major.
 */
function takeHarmonicsAway(pitches: readonly number[], strengths: number[], from: number): void {
  for (let at = strengths.length - 1; at >= from; at -= 1) {
    const pitch = pitches[at] as number;
    let explained = 0;
    for (let low = from; low < at; low += 1) {
      const interval = pitch - (pitches[low] as number);
      if (interval < HARMONICS[0] - SAME_PITCH) break;
      if (HARMONICS.some((harmonic) => Math.abs(interval - harmonic) < SAME_PITCH))
        explained += HARMONIC_STRENGTH * (strengths[low] as number);
    }
    strengths[at] = Math.sqrt(Math.max(0, (strengths[at] as number) - explained));
  }
}

/** Where between its neighbours a top lies: that of a parabola through their logarithms. */
function topBetween(below: number, here: number, above: number): number {
  if (below <= 0 || above <= 0) return 0;
  const [a, b, c] = [Math.log(below), Math.log(here), Math.log(above)];
  const bend = a - 2 * b + c;
  return bend < 0 ? Math.max(-0.5, Math.min(0.5, (a - c) / (2 * bend))) : 0;
}

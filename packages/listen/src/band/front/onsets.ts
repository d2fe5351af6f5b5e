import type { Sound } from '../../sound.js';
import { spectrumReader } from './spectrum.js';

/** How strongly something begins, moment by moment, so that the usual size is 1. */
export interface Onsets {
  /** Seconds from one moment to the next. */
  readonly hop: number;
  /** Of all that sounds. */
  readonly all: Float64Array;
  /** Of what is lower than a bass drum's skin. */
  readonly low: Float64Array;
}

const WINDOW = 0.046;
export const ONSET_HOP = 0.01;
const HIGHEST = 5400;

/** Edges of the bands in hertz. */
const EDGES: readonly number[] = [
  30, 70, 110, 160, 220, 300, 400, 520, 660, 820, 1000, 1250, 1550, 1900, 2300, 2800, 3400, 4200,
  5300,
];

/** Bands of the bass drum. */
const LOW_BANDS = 2;

/** Moments back that a band is compared with. */
const BACK = 2;

/** Powers so far below the loudest are silence. */
const FLOOR = 1e-5;

/** Moments on either side that say what is usual around a moment. */
const AROUND = 50;

/**
 * How strongly something begins in each moment: growth of the logarithm of each band, added up; that of the lowest
 * bands by their strength itself, since loud is what tells a first beat.
 */
export function onsetsOf({ sampleRate, samples }: Sound): Onsets {
  const { read, step } = spectrumReader(sampleRate, { seconds: WINDOW, highest: HIGHEST });
  const count = Math.floor(samples.length / sampleRate / ONSET_HOP) + 1;
  const bands = EDGES.length - 1;
  const levels = new Float64Array(count * bands);
  const edges = EDGES.map((edge) => edge / step);
  for (let at = 0; at < count; at += 1) {
    const spectrum = read(samples, Math.round(at * ONSET_HOP * sampleRate));
    for (let band = 0; band < bands; band += 1) {
      const from = Math.round(edges[band] as number);
      const to = Math.min(
        spectrum.length,
        Math.max(from + 1, Math.round(edges[band + 1] as number)),
      );
      let power = 0;
      for (let bin = from; bin < to; bin += 1) power += (spectrum[bin] as number) ** 2;
      levels[at * bands + band] = power;
    }
  }
  const low = evened(growth(levels.map(Math.sqrt), bands, LOW_BANDS));
  toLogarithms(levels, bands);
  return { hop: ONSET_HOP, all: evened(growth(levels, bands, bands)), low };
}

/** Each band beside its own loudest moment. */
function toLogarithms(levels: Float64Array, bands: number): void {
  for (let band = 0; band < bands; band += 1) {
    let loudest = 0;
    for (let at = band; at < levels.length; at += bands)
      loudest = Math.max(loudest, levels[at] as number);
    for (let at = band; at < levels.length; at += bands)
      levels[at] = loudest === 0 ? 0 : Math.log((levels[at] as number) / loudest + FLOOR);
  }
}

function growth(levels: Float64Array, bands: number, used: number): Float64Array {
  const grown = new Float64Array(levels.length / bands);
  for (let at = BACK; at < grown.length; at += 1) {
    let sum = 0;
    for (let band = 0; band < used; band += 1) {
      const here = levels[at * bands + band] as number;
      sum += Math.max(0, here - (levels[(at - BACK) * bands + band] as number));
    }
    grown[at] = sum;
  }
  return grown;
}

/** What is usual around taken away, and the usual size made 1. */
function evened(grown: Float64Array): Float64Array {
  const sums = new Float64Array(grown.length + 1);
  for (const [at, value] of grown.entries()) sums[at + 1] = (sums[at] as number) + value;
  let squares = 0;
  const evened = grown.map((value, at) => {
    const from = Math.max(0, at - AROUND);
    const to = Math.min(grown.length, at + AROUND + 1);
    const above = value - ((sums[to] as number) - (sums[from] as number)) / (to - from);
    squares += above * above;
    return above;
  });
  const size = Math.sqrt(squares / Math.max(1, evened.length));
  return size === 0 ? evened : evened.map((value) => value / size);
}

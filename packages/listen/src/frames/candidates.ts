import { itemAt } from '@reedplate/pitch';
import { Autocorrelator } from 'pitchy';
import { pitchOfHertz } from '../pitch-of-hertz.js';
import { refinePeriod } from './refine-period.js';

/** A pitch that a moment may have. */
export interface Candidate {
  /** MIDI number with its fraction. */
  readonly pitch: number;
  /** How likely it is among the candidates of its moment; all together 1. */
  readonly weight: number;
}

/** What is heard of pitch at one moment. */
export interface Periodicity {
  /** The likeliest first; none where the sound has no period. */
  readonly candidates: readonly Candidate[];
  /** How periodic the sound is, from 0 to 1. */
  readonly clarity: number;
}

const NOTHING: Periodicity = { candidates: [], clarity: 0 };

/** Shares of the highest top from which on a top may be the period, each as likely as the others. */
const THRESHOLDS = [0.8, 0.84, 0.88, 0.9, 0.92, 0.94, 0.96, 0.98] as const;
const HIGHEST_PITCH = 3600;

/**
 * Hears the pitches of windows of one size. Tops of how like a window is to itself after a time are taken for
 * its period by McLeod's method (McLeod and Wyvill, A smarter way to find pitch, ICMC 2005): the first that
 * reaches a share of the highest. Several shares are tried and give several candidates (Mauch and Dixon, pYIN,
 * ICASSP 2014), since in a room or a band the first choice is not always right.
 */
export function pitchListener(
  size: number,
  sampleRate: number,
): (window: Float32Array) => Periodicity {
  const correlator = Autocorrelator.forFloat32Array(size);
  const products = new Float32Array(size);
  const shortest = Math.max(2, Math.floor(sampleRate / HIGHEST_PITCH));
  return (window) => {
    correlator.autocorrelate(window, products);
    const tops = topsOf(normed(products, window), shortest, size >> 1);
    const clarity = Math.min(1, Math.max(0, ...tops.map(({ height }) => height)));
    if (clarity === 0) return NOTHING;
    return { clarity, candidates: candidatesOf(tops, clarity, window, sampleRate) };
  };
}

/** Likeness by lag, 1 where the same: McLeod's normed square difference. In place. */
function normed(products: Float32Array, window: Float32Array): Float32Array {
  let energy = 2 * itemAt(products, 0);
  const last = window.length - 1;
  for (let lag = 0; lag < products.length; lag += 1) {
    const product = itemAt(products, lag);
    products[lag] = energy > 1e-9 ? (2 * product) / energy : 0;
    energy -= itemAt(window, lag) ** 2 + itemAt(window, last - lag) ** 2;
  }
  return products;
}

interface Top {
  readonly lag: number;
  readonly height: number;
}

/** The highest place of each stretch above zero, from the first zero on. */
function topsOf(likeness: Float32Array, shortest: number, longest: number): readonly Top[] {
  const tops: Top[] = [];
  let best: Top | undefined;
  const first = likeness.findIndex((height) => height <= 0);
  for (let lag = first === -1 ? longest : first; lag < longest; lag += 1) {
    const height = itemAt(likeness, lag);
    if (height > (best?.height ?? 0)) best = { lag, height };
    if (height > 0 || best === undefined) continue;
    if (best.lag >= shortest) tops.push(best);
    best = undefined;
  }
  return tops;
}

function candidatesOf(
  tops: readonly Top[],
  clarity: number,
  window: Float32Array,
  sampleRate: number,
): readonly Candidate[] {
  const weights = new Map<number, number>();
  for (const share of THRESHOLDS) {
    const reaches = tops.findIndex(({ height }) => height >= share * clarity);
    const { lag } = itemAt(tops, reaches);
    weights.set(lag, (weights.get(lag) ?? 0) + 1 / THRESHOLDS.length);
  }
  return [...weights]
    .map(([lag, weight]) => ({
      pitch: pitchOfHertz(sampleRate / refinePeriod(window, lag)),
      weight,
    }))
    .sort((a, b) => b.weight - a.weight);
}

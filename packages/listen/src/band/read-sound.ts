import type { Sound } from '../sound.js';
import { type Readings, readAll } from './choose.js';
import type { FormTable } from './form/form-table.js';
import { chromaOf } from './front/chroma.js';
import { decimate } from './front/decimate.js';
import { onsetsOf } from './front/onsets.js';
import { peaksOf } from './front/peaks.js';
import { tuningOf } from './front/tuning.js';
import { gridsOf } from './grids.js';

/** What a recording of a band may be, and how it is tuned. */
export interface SoundReadings {
  readonly readings: Readings;
  /** Semitones above an A4 of 440 hertz. */
  readonly tuning: number;
  /** Seconds of silence before it begins, which the grids do not count. */
  readonly silence: number;
}

/** Reads a recording of a band in every way that there is; undefined where it is silent. */
export function readSound(sound: Sound, table: FormTable): SoundReadings | undefined {
  const silence = silenceBefore(sound.samples);
  if (silence === undefined) return undefined;
  const heard = decimate({ ...sound, samples: sound.samples.subarray(silence) });
  const peaks = peaksOf(heard);
  if (peaks.pitches.length === 0) return undefined;
  const tuning = tuningOf(peaks);
  const chroma = chromaOf(peaks, tuning);
  const seconds = heard.samples.length / heard.sampleRate;
  const grids = gridsOf(onsetsOf(heard));
  const readings = readAll(grids, chroma, table, seconds);
  return { readings, tuning, silence: silence / sound.sampleRate };
}

/** Softer than this share of the loudest sample is silence. */
const SILENT = 0.001;

/** Samples before the first that sounds; undefined where none does. */
function silenceBefore(samples: Float32Array): number | undefined {
  let loudest = 0;
  for (const sample of samples) loudest = Math.max(loudest, Math.abs(sample));
  const first = samples.findIndex((sample) => Math.abs(sample) > SILENT * loudest);
  return first === -1 ? undefined : first;
}

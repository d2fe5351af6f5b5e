import type { Sheet } from '@reedplate/interchange';
import { type OptionNames, ReedplateError, requireOptions } from '@reedplate/pitch';
import { type BandEvent, bandEvents } from './band-events.js';
import { eventSound, requireRate, USUAL_RATE } from './event-sound.js';

/** How {@link renderBand} plays. */
export interface RenderBandOptions {
  /** Samples a second, 8,000 to 192,000; default 44,100. */
  readonly sampleRate?: number;
  /** Whether every beat has a click. Default `false`: the count-in alone. */
  readonly click?: boolean;
}

/** One channel of sound, as `@reedplate/listen` reads and writes it. */
export interface BandSound {
  /** Samples a second. */
  readonly sampleRate: number;
  /** Pressure, from -1 to 1. */
  readonly samples: Float32Array;
}

const RENDER_OPTIONS: OptionNames<RenderBandOptions> = { sampleRate: true, click: true };

/** The loudest sample: a little below full, so that a converter has room between two of them. */
const LOUDEST = 0.8;

/** Seconds of the longest sound: at the usual rate a file of 160 MB. */
const MOST_SECONDS = 30 * 60;

/** Seconds after the last event begins and ends, in which it rings. */
const RING = 2;

/**
 * A band as sound, by a small synthesiser of our own: sines and noise, no recording. The same sheet gives the
 * same samples on every runtime. No sample is beyond 0.8: where the sum of all would be, all of it is softer.
 *
 * Start low where you listen to it: long loud sound harms hearing.
 *
 * @throws ReedplateError `CHART_INVALID`, `OPTION_UNKNOWN`, `NUMBER_RANGE` for a wrong rate, or for more than
 * half an hour
 * @example
 * ```ts
 * import { makeBacking, renderBand } from '@reedplate/backing';
 * import { makeChart } from '@reedplate/form';
 *
 * const backing = makeBacking(makeChart('basic', 'G', { tempo: 240 }));
 * const { samples } = renderBand(backing, { sampleRate: 8000 });
 * samples.length / 8000 > 14; // => true
 * renderBand(backing, { sampleRate: 1 }); // throws NUMBER_RANGE
 * ```
 */
export function renderBand(backing: Sheet, options: RenderBandOptions = {}): BandSound {
  const { sampleRate = USUAL_RATE, click = false } = requireOptions(
    options,
    RENDER_OPTIONS,
    'renderBand',
  );
  requireRate(sampleRate);
  const events = bandEvents(backing, { click });
  const seconds = events.reduce((last, { start, duration }) => Math.max(last, start + duration), 0);
  if (seconds > MOST_SECONDS) throw tooLong(seconds);
  const samples = new Float32Array(Math.ceil((seconds + RING) * sampleRate));
  mix(samples, events, sampleRate);
  keepBelow(samples, LOUDEST);
  return Object.freeze({ sampleRate, samples });
}

/** Adds every event in its place; what sounds alike is made once. */
function mix(samples: Float32Array, events: readonly BandEvent[], sampleRate: number): void {
  const made = new Map<string, Float32Array>();
  for (const event of events) {
    const name = `${event.sound} ${event.pitch} ${event.duration.toFixed(6)}`;
    const sound = made.get(name) ?? eventSound(event, { sampleRate });
    made.set(name, sound);
    const from = Math.round(event.start * sampleRate);
    const length = Math.min(sound.length, samples.length - from);
    for (let at = 0; at < length; at += 1) {
      const place = from + at;
      samples[place] = (samples[place] as number) + event.gain * (sound[at] as number);
    }
  }
}

function keepBelow(samples: Float32Array, loudest: number): void {
  let peak = 0;
  for (const sample of samples) peak = Math.max(peak, Math.abs(sample));
  if (peak <= loudest) return;
  const factor = loudest / peak;
  for (let at = 0; at < samples.length; at += 1) samples[at] = (samples[at] as number) * factor;
}

function tooLong(seconds: number): ReedplateError {
  const value = `${Math.ceil(seconds / 60)} minutes`;
  const expected = `a band of ${MOST_SECONDS / 60} minutes at most; fewer choruses, or a MIDI file`;
  return new ReedplateError({ code: 'NUMBER_RANGE', value, expected });
}

import { type ErrorPlace, ReedplateError } from '@reedplate/pitch';

/** One channel of sound. */
export interface Sound {
  /** Samples a second. */
  readonly sampleRate: number;
  /** Pressure, from -1 to 1. */
  readonly samples: Float32Array;
}

/** Rates that recorders and browsers use. */
const LOWEST_RATE = 8000;
const HIGHEST_RATE = 192_000;

/** Two hours at the usual rate: what is longer is no take. */
const MOST_SAMPLES = 2 * 60 * 60 * 48_000;

/**
 * A sound, if it is one.
 *
 * @throws ReedplateError `SOUND_INVALID`, with the place of the first sample that is no number
 */
export function requireSound(sound: Sound): Sound {
  const { sampleRate, samples } = Object(sound);
  if (!(samples instanceof Float32Array) || samples.length > MOST_SAMPLES) {
    throw invalid(samples?.length, 'samples as a Float32Array, two hours at the most', {
      path: 'samples',
    });
  }
  if (!(sampleRate >= LOWEST_RATE && sampleRate <= HIGHEST_RATE)) {
    const expected = `samples a second, from ${LOWEST_RATE} to ${HIGHEST_RATE}`;
    throw invalid(sampleRate, expected, { path: 'sampleRate' });
  }
  const at = samples.findIndex((sample) => !Number.isFinite(sample));
  if (at === -1) return sound;
  throw invalid(samples[at], 'a number', { path: `samples[${at}]`, index: at });
}

function invalid(value: unknown, expected: string, where: ErrorPlace): ReedplateError {
  return new ReedplateError({ code: 'SOUND_INVALID', value, expected, where });
}

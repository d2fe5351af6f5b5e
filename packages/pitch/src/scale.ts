import { readDegree } from './degree.js';
import { ReedplateError } from './error.js';
import { nearestOf } from './nearest.js';
import { type PitchClass, toPitchClass } from './pitch-class.js';
import { SCALE_TYPES } from './scale-types.js';

/** A scale by name, before it has a tonic. */
export interface Scale {
  readonly name: string;
  /** Semitones above the tonic, rising from 0, without the octave. */
  readonly semitones: readonly PitchClass[];
}

const SCALES: ReadonlyMap<string, Scale> = new Map(
  SCALE_TYPES.flatMap(([degrees, names]) => {
    const known = names.split(', ');
    const scale = makeScale(known[0] ?? '', degrees);
    return known.map((name): [string, Scale] => [name, scale]);
  }),
);

function makeScale(name: string, degrees: string): Scale {
  const semitones = degrees.split(' ').map((degree) => toPitchClass(readDegree(degree).semitones));
  return Object.freeze({ name, semitones: Object.freeze(semitones) });
}

/**
 * Reads a scale's name, capitals ignored: any of the 92 scales of {@link scaleNames}, under their
 * other names too. `blues` is the minor blues scale.
 *
 * @throws ReedplateError `SCALE_UNKNOWN`
 * @example
 * ```ts
 * import { parseScale } from '@reedplate/pitch';
 *
 * parseScale('blues'); // => { name: 'minor blues', semitones: [0, 3, 5, 6, 7, 10] }
 * parseScale('blue'); // throws SCALE_UNKNOWN
 * ```
 */
export function parseScale(name: string): Scale {
  const scale = typeof name === 'string' ? SCALES.get(name.trim().toLowerCase()) : undefined;
  if (scale !== undefined) return scale;
  throw new ReedplateError({
    code: 'SCALE_UNKNOWN',
    value: name,
    expected: 'a scale such as blues, minor pentatonic or mixolydian',
    nearest: typeof name === 'string' ? nearestOf(name, SCALES.keys()) : undefined,
  });
}

/**
 * The names of every scale that {@link parseScale} reads, other names for the same left out.
 *
 * @example
 * ```ts
 * import { scaleNames } from '@reedplate/pitch';
 *
 * scaleNames().includes('minor pentatonic'); // => true
 * ```
 */
export function scaleNames(): readonly string[] {
  return [...new Set([...SCALES.values()].map((scale) => scale.name))];
}

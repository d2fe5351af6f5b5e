import { Interval, ScaleType } from 'tonal';
import { ReedplateError } from './error.js';
import { nearestOf } from './nearest.js';
import { type PitchClass, toPitchClass } from './pitch-class.js';

/** A scale by name, before it has a tonic. */
export interface Scale {
  readonly name: string;
  /** Semitones above the tonic, rising from 0, without the octave. */
  readonly semitones: readonly PitchClass[];
}

/** Names blues players use that the scale dictionary lists under another. Common practice. */
const TRADE_NAMES: ReadonlyMap<string, string> = new Map([
  ['blues', 'minor blues'],
  ['minor', 'aeolian'],
  ['natural minor', 'aeolian'],
]);

const SCALES: ReadonlyMap<string, Scale> = readScales();

function readScales(): ReadonlyMap<string, Scale> {
  const byName = new Map<string, Scale>();
  for (const { name, aliases, intervals } of ScaleType.all()) {
    const semitones = intervals.map((interval) => toPitchClass(Interval.semitones(interval)));
    const scale = Object.freeze({ name, semitones: Object.freeze(semitones) });
    for (const known of [name, ...aliases]) byName.set(known, scale);
  }
  for (const [trade, name] of TRADE_NAMES) {
    const scale = byName.get(name);
    if (scale !== undefined && !byName.has(trade)) byName.set(trade, scale);
  }
  return byName;
}

/**
 * Reads a scale's name: any that tonal knows, and `blues` for the minor blues scale.
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

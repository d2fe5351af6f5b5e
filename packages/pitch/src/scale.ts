import { interval as tonalInterval } from '@tonaljs/pitch-interval';
import { all as tonalScaleTypes } from '@tonaljs/scale-type';
import { ReedplateError } from './error.js';
import { lazily } from './lazily.js';
import { nearestOf } from './nearest.js';
import { type PitchClass, toPitchClass } from './pitch-class.js';
import type { TonalScale } from './tonal-types.js';

/** A scale by name, before it has a tonic. */
export interface Scale {
  readonly name: string;
  /** Semitones above the tonic, rising from 0, without the octave. */
  readonly semitones: readonly PitchClass[];
}

/** A scale as it is taken everywhere: by name, as a scale, or as tonal gives it. */
export type ScaleLike = string | Scale | TonalScale;

/** Names of scales that tonal does not list, each after the one that it does. */
const ADDED: ReadonlyMap<string, string> = /* @__PURE__ */ new Map([['aeolian', 'natural minor']]);

/** Every name of tonal's dictionary, and those added, with the scale. */
const scales = /* @__PURE__ */ lazily((): ReadonlyMap<string, Scale> => {
  const known = tonalScaleTypes().flatMap(({ name, aliases, intervals }) => {
    const scale = makeScale(name, intervals);
    const names = [name, ...aliases].flatMap((known) => [known, ADDED.get(known) ?? []].flat());
    return names.map((each): [string, Scale] => [each, scale]);
  });
  return new Map(known);
});

function makeScale(name: string, intervals: readonly string[]): Scale {
  const semitones = intervals.map((interval) => toPitchClass(tonalInterval(interval).semitones));
  return Object.freeze({ name, semitones: Object.freeze(semitones) });
}

/**
 * Reads a scale's name, capitals ignored: any of the 92 scales of {@link scaleNames}, under their
 * other names too. `blues` is the minor blues scale. A scale, and what `Scale.get` of tonal gives,
 * are read too; a tonic is left out.
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
export function parseScale(scale: ScaleLike): Scale {
  const name = nameOf(scale);
  const found = name === undefined ? undefined : scales().get(name.trim().toLowerCase());
  if (found !== undefined) return found;
  throw new ReedplateError({
    code: 'SCALE_UNKNOWN',
    value: scale,
    expected: 'a scale such as blues, minor pentatonic or mixolydian',
    nearest: name === undefined ? undefined : nearestOf(name, scales().keys()),
  });
}

/** The name of what may be a scale; tonal's own names begin with the tonic, its types do not. */
function nameOf(scale: unknown): string | undefined {
  if (typeof scale !== 'object' || scale === null) {
    return typeof scale === 'string' ? scale : undefined;
  }
  const { type, name } = scale as { readonly type?: unknown; readonly name?: unknown };
  const known = type ?? name;
  return typeof known === 'string' ? known : undefined;
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
  return Object.freeze([...new Set([...scales().values()].map((scale) => scale.name))]);
}

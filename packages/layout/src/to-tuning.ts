import { nearestOf, ReedplateError } from '@reedplate/pitch';
import type { Temperament } from './temperament.js';
import type { Tuning } from './tuning.js';
import { TUNINGS_BY_ID, type TuningName } from './tunings.js';

/** A tuning, or its id: one of the catalogue, or one of those given by `known`. */
export type TuningLike = Tuning | TuningName;

/** Tunings and temperaments of one's own that are known by their id, before those of the catalogue. */
export interface KnownTunings {
  readonly tunings?: readonly Tuning[];
  readonly temperaments?: readonly Temperament[];
}

/**
 * The tuning itself, given as a tuning or by its id: how every function here takes a tuning.
 *
 * @internal
 * @throws ReedplateError `TUNING_UNKNOWN`, or `TUNING_INVALID` for what is no tuning
 * @example
 * ```ts
 * import { makeTuning, toTuning } from '@reedplate/layout';
 *
 * toTuning('natural-minor').label; // => 'Gm'
 * const tiny = makeTuning({ id: 'tiny', blow: 'C4', draw: 'D4' });
 * toTuning('tiny', { tunings: [tiny] }).holes.length; // => 1
 * toTuning('tiny'); // throws TUNING_UNKNOWN
 * ```
 */
export function toTuning(tuning: TuningLike, { tunings = [] }: KnownTunings = {}): Tuning {
  if (typeof tuning !== 'string') return requireTuning(tuning);
  const found = tunings.find(({ id }) => id === tuning) ?? TUNINGS_BY_ID.get(tuning);
  if (found !== undefined) return found;
  throw new ReedplateError({
    code: 'TUNING_UNKNOWN',
    value: tuning,
    expected: 'the id of a tuning in the catalogue',
    nearest: nearestOf(tuning, [...tunings.map(({ id }) => id), ...TUNINGS_BY_ID.keys()]),
  });
}

/** A tuning has a label, a harp a key: so they are told apart. */
function requireTuning(value: unknown): Tuning {
  if (typeof value === 'object' && value !== null && 'labelPosition' in value && 'holes' in value) {
    return value as Tuning;
  }
  throw new ReedplateError({
    code: 'TUNING_INVALID',
    value,
    expected: 'a tuning, or the id of one such as standard or natural-minor',
  });
}

import {
  nearestOf,
  type OptionNames,
  ReedplateError,
  requireOptions,
  requireShape,
} from '@reedplate/pitch';
import { checkHoles } from './check-holes.js';
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
 * The tuning itself, given as a tuning, by its id or by an alias: how every function here takes a tuning.
 *
 * @internal
 * @throws ReedplateError `TUNING_UNKNOWN`, or `TUNING_INVALID` for what is no tuning
 * @example
 * ```ts
 * import { makeTuning, toTuning } from '@reedplate/layout';
 *
 * toTuning('natural-minor').label; // => 'Gm'
 * toTuning('country').id; // => 'raised-fifth-draw'
 * const tiny = makeTuning({ id: 'tiny', blow: 'C4', draw: 'D4' });
 * toTuning('tiny', { tunings: [tiny] }).holes.length; // => 1
 * toTuning('tiny'); // throws TUNING_UNKNOWN
 * ```
 */
export function toTuning(tuning: TuningLike, known: KnownTunings = {}): Tuning {
  if (typeof tuning !== 'string') return requireTuning(tuning);
  const { tunings = [] } = requireKnown(known);
  const isNamed = ({ id, aliases = [] }: Tuning): boolean =>
    id === tuning || aliases.includes(tuning);
  const found = tunings.find(isNamed) ?? TUNINGS_BY_ID.get(tuning);
  if (found !== undefined) return found;
  throw new ReedplateError({
    code: 'TUNING_UNKNOWN',
    value: tuning,
    expected: 'the id of a tuning in the catalogue',
    nearest: nearestOf(tuning, [...tunings.map(({ id }) => id), ...TUNINGS_BY_ID.keys()]),
  });
}

/** Effort models stand in the same field, where a function takes both. */
const KNOWN: OptionNames<KnownTunings & { readonly models?: unknown }> = {
  tunings: true,
  temperaments: true,
  models: true,
};

/**
 * What one's own tunings and temperaments are given by, if it is that.
 *
 * @throws ReedplateError `OPTION_UNKNOWN`, or `TUNING_INVALID` for what has no id
 */
export function requireKnown(known: KnownTunings): KnownTunings {
  const { tunings = [], temperaments = [] } = requireOptions(known, KNOWN, 'known');
  for (const [field, list] of Object.entries({ tunings, temperaments })) {
    const words = { code: 'TUNING_INVALID', path: `known.${field}` } as const;
    requireShape({ list }, { list: 'list' }, { ...words, what: "a list of one's own" });
    for (const own of list) requireShape(own, { id: 'text' }, { ...words, what: 'one with an id' });
  }
  return known;
}

/** A tuning has a label, a harp a key: so they are told apart. */
function requireTuning(value: unknown): Tuning {
  if (
    typeof value === 'object' &&
    value !== null &&
    'labelPosition' in value &&
    'holes' in value &&
    Array.isArray(value.holes)
  ) {
    checkHoles(value.holes, 'TUNING_INVALID');
    return value as Tuning;
  }
  throw new ReedplateError({
    code: 'TUNING_INVALID',
    value,
    expected: 'a tuning, or the id of one such as standard or natural-minor',
  });
}

import {
  type KeyLike,
  type OptionNames,
  ReedplateError,
  requireOptions,
  requireShape,
  type Shape,
} from '@reedplate/pitch';
import { checkHoles } from './check-holes.js';
import type { Harp } from './harp.js';
import { makeHarp } from './make-harp.js';
import { parseHarp } from './parse-harp.js';
import type { KnownTunings } from './to-tuning.js';

/**
 * A harp, or its name as `harpName` gives it: `C`, `low F`, `A natural-minor`. A key means the harp
 * in standard tuning that carries it.
 */
export type HarpLike = Harp | KeyLike | (string & Record<never, never>);

/**
 * The harp itself, given as a harp or by its name: how every function here takes a harp.
 *
 * @internal
 * @throws ReedplateError `KEY_UNKNOWN`, `TUNING_UNKNOWN`, or `HARP_INVALID` for what is no harp
 * @example
 * ```ts
 * import { toHarp } from '@reedplate/layout';
 *
 * toHarp('low F').holes[0]?.blow; // => 53
 * toHarp(toHarp('C')).key; // => 'C'
 * toHarp('low'); // throws HARP_INVALID
 * ```
 */
export function toHarp(harp: HarpLike, known: KnownTunings = {}): Harp {
  if (isHarp(harp)) return requireHarp(harp);
  if (typeof harp === 'string') return parseHarp(harp, { known });
  if (isKey(harp)) return makeHarp(harp);
  throw new ReedplateError({
    code: 'HARP_INVALID',
    value: harp,
    expected: 'a harp, or the name of one such as C or low F',
  });
}

/** Where a harp is looked up by its name. */
export interface HarpByNameOptions {
  /** Tunings of one's own that may be named by their id. */
  readonly known?: KnownTunings;
}

const BY_NAME: OptionNames<HarpByNameOptions> = { known: true };

/**
 * The harp itself, as {@link toHarp} gives it, for a function with no other option.
 *
 * @internal
 */
export function harpByName(harp: HarpLike, options: HarpByNameOptions, what: string): Harp {
  return toHarp(harp, requireOptions(options, BY_NAME, what).known);
}

function isHarp(value: unknown): value is Harp {
  return (
    typeof value === 'object' &&
    value !== null &&
    'firstPosition' in value &&
    'holes' in value &&
    Array.isArray(value.holes)
  );
}

const HARP: Shape<Harp> = { tuning: 'text', key: 'text', firstPosition: 'text', register: 'text' };
const WORDS = { what: 'a harp, as makeHarp gives it', code: 'HARP_INVALID' } as const;

/** What has the fields of a harp, if it is one. */
function requireHarp(harp: Harp): Harp {
  checkHoles(requireShape(harp, HARP, WORDS).holes, 'HARP_INVALID');
  return harp;
}

function isKey(value: unknown): value is Exclude<KeyLike, string> {
  return typeof value === 'object' && value !== null && 'tonic' in value;
}

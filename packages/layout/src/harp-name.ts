import { parseKey, ReedplateError } from '@reedplate/pitch';
import type { Harp, Register } from './harp.js';
import { makeHarp, REGISTERS } from './make-harp.js';
import type { Tuning } from './tuning.js';

/**
 * What a harp is called in a list: its register where that is not the standard one, its key, and
 * its tuning where that is not the standard one.
 *
 * @example
 * ```ts
 * import { harpName, makeHarp } from '@reedplate/layout';
 *
 * harpName(makeHarp('C')); // => 'C'
 * harpName(makeHarp('F', { register: 'low' })); // => 'low F'
 * harpName(makeHarp('Am', { tuning: 'natural-minor' })); // => 'Am natural-minor'
 * ```
 */
export function harpName({ register, key, tuning }: Harp): string {
  const parts = [register === 'standard' ? '' : register, key, tuning === 'standard' ? '' : tuning];
  return parts.filter((part) => part !== '').join(' ');
}

/** How {@link parseHarp} reads a name. */
export interface ParseHarpOptions {
  /** The tuning that a word means; default that of the catalogue with this id. */
  readonly tuningOf?: (word: string) => Tuning;
}

/**
 * The harp that a name means: a key, a register before it and the id of a tuning after it where
 * they are not the standard ones. The inverse of {@link harpName}.
 *
 * @throws ReedplateError `HARP_INVALID` for text of another shape, `KEY_UNKNOWN`, `TUNING_UNKNOWN`
 * @example
 * ```ts
 * import { parseHarp, tuningById } from '@reedplate/layout';
 *
 * parseHarp('low F').holes[0]?.blow; // => 53
 * parseHarp('Am natural-minor').firstPosition; // => 'D'
 * parseHarp('C mine', { tuningOf: () => tuningById('dorian') }).tuning; // => 'dorian'
 * parseHarp('low'); // throws HARP_INVALID
 * ```
 */
export function parseHarp(name: string, options: ParseHarpOptions = {}): Harp {
  const { tuningOf } = options;
  const words = typeof name === 'string' ? name.trim().split(/\s+/u) : [];
  const register = REGISTERS.find((known) => known === words[0]?.toLowerCase());
  const [key, tuning = 'standard', ...rest] = register === undefined ? words : words.slice(1);
  if (key === undefined || key === '' || rest.length > 0) throw unknownName(name);
  return makeHarp(parseKey(key), {
    tuning: tuningOf === undefined ? tuning : tuningOf(tuning),
    register: register ?? ('standard' satisfies Register),
  });
}

function unknownName(value: unknown): ReedplateError {
  return new ReedplateError({
    code: 'HARP_INVALID',
    value,
    expected: 'a key with an optional register before and tuning after it, such as low F',
  });
}

import { type OptionNames, parseKey, ReedplateError, requireOptions } from '@reedplate/pitch';
import type { Harp, Register } from './harp.js';
import { makeHarp, REGISTERS } from './make-harp.js';
import type { KnownTunings } from './to-tuning.js';

/** How {@link parseHarp} reads a name. */
export interface ParseHarpOptions {
  /** Tunings of one's own that may be named by their id. */
  readonly known?: KnownTunings;
}

const PARSE_HARP_OPTIONS: OptionNames<ParseHarpOptions> = { known: true };

/**
 * The harp that a name means: a key, a register before it and the id of a tuning after it where
 * they are not the standard ones. The inverse of `harpName`.
 *
 * @throws ReedplateError `HARP_INVALID` for text of another shape, `KEY_UNKNOWN`, `TUNING_UNKNOWN`
 * @example
 * ```ts
 * import { makeTuning, parseHarp } from '@reedplate/layout';
 *
 * parseHarp('low F').holes[0]?.blow; // => 53
 * parseHarp('Am natural-minor').firstPosition; // => 'D'
 * const mine = makeTuning({ id: 'mine', blow: 'C4 E4', draw: 'D4 G4' });
 * parseHarp('A mine', { known: { tunings: [mine] } }).holes[0]; // => { hole: 1, blow: 57, draw: 59 }
 * parseHarp('low'); // throws HARP_INVALID
 * ```
 */
export function parseHarp(name: string, options: ParseHarpOptions = {}): Harp {
  const given = requireOptions(options, PARSE_HARP_OPTIONS, 'parseHarp');
  const words = typeof name === 'string' ? name.trim().split(/\s+/u) : [];
  const register = REGISTERS.find((each) => each === words[0]?.toLowerCase());
  const [key, tuning = 'standard', ...rest] = register === undefined ? words : words.slice(1);
  if (key === undefined || key === '' || rest.length > 0) throw unknownName(name);
  return makeHarp(parseKey(key), {
    ...given,
    tuning,
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

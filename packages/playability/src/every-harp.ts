import { type Harp, makeHarp, type Register, type Tuning } from '@reedplate/layout';
import { parseKey, requireSome, TWELVE_KEYS } from '@reedplate/pitch';

/** Which harps {@link everyHarp} makes. */
export interface EveryHarpOptions {
  /** Keys as printed on harps; default the twelve. */
  readonly keys?: readonly string[];
  /** Tunings, or ids of the catalogue; default `standard` alone. */
  readonly tunings?: readonly (string | Tuning)[];
  /** Default `standard` alone. */
  readonly registers?: readonly Register[];
}

/**
 * The harps of every combination of key, tuning and register: what `fitHarps` chooses among. By tuning,
 * then by register, then by key.
 *
 * @throws ReedplateError `KEY_UNKNOWN`, `TUNING_UNKNOWN`, `OPTION_UNKNOWN`, `HARP_INVALID`,
 *   or `LIST_EMPTY` for an empty list
 * @example
 * ```ts
 * import { everyHarp } from '@reedplate/playability';
 *
 * everyHarp({ keys: ['A', 'C'], tunings: ['standard', 'dorian'] }).length; // => 4
 * everyHarp({ keys: ['H'] }); // throws KEY_UNKNOWN
 * everyHarp({ keys: [] }); // throws LIST_EMPTY
 * ```
 */
export function everyHarp({
  keys = TWELVE_KEYS.map(({ tonic }) => tonic),
  tunings = ['standard'],
  registers = ['standard'],
}: EveryHarpOptions = {}): readonly Harp[] {
  return Object.freeze(
    requireSome(tunings, 'one tuning').flatMap((tuning) =>
      requireSome(registers, 'one register').flatMap((register) =>
        requireSome(keys, 'one key').map((key) => makeHarp(parseKey(key), { tuning, register })),
      ),
    ),
  );
}

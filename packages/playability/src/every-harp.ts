import {
  type Harp,
  type KnownTunings,
  makeHarp,
  type Register,
  type TuningLike,
  toTuning,
} from '@reedplate/layout';
import {
  type KeyLike,
  type OptionNames,
  parseKey,
  requireOptions,
  requireSome,
  TWELVE_KEYS,
} from '@reedplate/pitch';

/** Which harps {@link everyHarp} makes. */
export interface EveryHarpOptions {
  /** Keys as printed on harps; default the twelve. */
  readonly keys?: readonly (KeyLike | string)[];
  /** Tunings, or ids of the catalogue; default `standard` alone. */
  readonly tunings?: readonly TuningLike[];
  /** Default `standard` alone. */
  readonly registers?: readonly Register[];
  /** Tunings of one's own that may be named by their id. */
  readonly known?: KnownTunings;
}

const EVERY_HARP_OPTIONS: OptionNames<EveryHarpOptions> = {
  keys: true,
  tunings: true,
  registers: true,
  known: true,
};

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
export function everyHarp(options: EveryHarpOptions = {}): readonly Harp[] {
  const given = requireOptions(options, EVERY_HARP_OPTIONS, 'everyHarp');
  const { keys = TWELVE_KEYS, tunings = ['standard'], registers = ['standard'], known } = given;
  return Object.freeze(
    requireSome(tunings, 'one tuning').flatMap((tuning) =>
      requireSome(registers, 'one register').flatMap((register) =>
        requireSome(keys, 'one key').map((key) =>
          makeHarp(typeof key === 'string' ? parseKey(key) : key, {
            tuning: toTuning(tuning, known),
            register,
          }),
        ),
      ),
    ),
  );
}

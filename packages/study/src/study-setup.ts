import {
  type PlayerLike,
  readPlayer,
  readTuning,
  type Tuning,
  toPlayer,
  tuningById,
} from '@reedplate/layout';
import {
  deepFreeze,
  type OptionNames,
  ReedplateError,
  requireInteger,
  requireOptions,
  requirePositive,
} from '@reedplate/pitch';
import type { EffortModel } from '@reedplate/playability';
import { readEffortModel } from '@reedplate/playability';
import type { PositionNumber } from '@reedplate/position';

/** What a study asks of every tune: each tuning in each position at each level. */
export interface StudySetup {
  readonly model: EffortModel;
  /** Whole, so that one that is in no catalogue goes with the setup. */
  readonly tunings: readonly Tuning[];
  /** Positions, counted from the tune's key; tunes must then give one. */
  readonly positions: readonly PositionNumber[];
  /** Levels, and players whole. */
  readonly levels: readonly PlayerLike[];
  /** Octaves a tune may be moved, the best for each cell. */
  readonly octaves: readonly number[];
  /** Felt beats a minute of every tune, in place of its own; left out where each has its own. */
  readonly tempo?: number;
}

/** What {@link makeStudySetup} fills in. */
export interface StudySpec {
  /** Default that of the player where there is one alone, else `intermediate`. */
  readonly model?: string | EffortModel;
  /** Tunings, or ids of the catalogue, each id once; default `standard` alone. */
  readonly tunings?: readonly (string | Tuning)[];
  /** Default 1, 2 and 3. */
  readonly positions?: readonly number[];
  /** Levels or players, each id once; default `bends` alone. */
  readonly levels?: readonly PlayerLike[];
  /** Default -1, 0 and 1; each from -10 to 10. */
  readonly octaves?: readonly number[];
  /**
   * Felt beats a minute of every tune, above 0 and at most 1000; default that of the tune, and 100 where it
   * says none.
   */
  readonly tempo?: number;
}

const SPEC_OPTIONS: OptionNames<StudySpec> = {
  model: true,
  tunings: true,
  positions: true,
  levels: true,
  octaves: true,
  tempo: true,
};

/**
 * Sets up a study: checked and frozen, JSON that can be sent to other processes and hosts.
 *
 * @throws ReedplateError `MODEL_UNKNOWN`, `MODEL_INVALID`, `TUNING_UNKNOWN`, what `readTuning`
 * throws, `NUMBER_RANGE`, `OPTION_UNKNOWN`; `STUDY_INVALID` for an empty or repeated list
 * @example
 * ```ts
 * import { makeStudySetup } from '@reedplate/study';
 *
 * makeStudySetup({ positions: [2] }).octaves; // => [-1, 0, 1]
 * makeStudySetup({ positions: [] }); // throws STUDY_INVALID
 * ```
 */
export function makeStudySetup(spec: StudySpec = {}): StudySetup {
  requireOptions(spec, SPEC_OPTIONS, 'makeStudySetup');
  const tunings = requireDistinct(spec.tunings ?? ['standard'], 'tunings').map(readNamedTuning);
  const positions = requireDistinct(spec.positions ?? [1, 2, 3], 'positions');
  const levels = requireDistinct<PlayerLike>(spec.levels ?? ['bends'], 'levels').map(readLevel);
  const [first, ...others] = levels.map((level) => toPlayer(level).model);
  const model = readEffortModel(
    spec.model ?? (others.length === 0 ? first : undefined) ?? 'intermediate',
  );
  const octaves = requireDistinct(spec.octaves ?? [-1, 0, 1], 'octaves');
  requireDistinct(
    tunings.map(({ id }) => id),
    'tunings',
  );
  requireDistinct(
    levels.map((level) => toPlayer(level).id),
    'levels',
  );
  return deepFreeze({
    model,
    tunings,
    positions: positions.map(
      (position) =>
        requireInteger(position, { min: 1, max: 12, what: 'a position' }) as PositionNumber,
    ),
    levels,
    octaves: octaves.map((octave) =>
      requireInteger(octave, { min: -10, max: 10, what: 'octaves' }),
    ),
    ...(spec.tempo === undefined ? {} : { tempo: requireTempo(spec.tempo) }),
  });
}

/** A level stays a word; a player is checked and goes with the setup whole. */
function readLevel(level: PlayerLike): PlayerLike {
  toPlayer(level);
  return typeof level === 'string' ? level : readPlayer(level);
}

function requireTempo(tempo: number): number {
  return requirePositive(tempo, { max: 1000, what: 'felt beats a minute' });
}

function readNamedTuning(tuning: string | Tuning): Tuning {
  return typeof tuning === 'string' ? tuningById(tuning) : readTuning(tuning);
}

function requireDistinct<Item>(list: readonly Item[], path: string): readonly Item[] {
  const isList = Array.isArray(list) && list.length > 0;
  if (isList && new Set(list).size === list.length) return list;
  throw new ReedplateError({
    code: 'STUDY_INVALID',
    value: list,
    expected: 'a list of one or more, each once',
    where: { path },
  });
}

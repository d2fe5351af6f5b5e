import { type Harp, type PlayerLike, type SoundingOptions, toPlayer } from '@reedplate/layout';
import { requireOneOf } from '@reedplate/pitch';
import type { EffortModel } from './effort-model.js';
import { readEffortModel } from './make-effort-model.js';
import { PATH_OBJECTIVES, type PathHead, type PathObjective, type PathOptions } from './path.js';

/**
 * What is assumed of the player and of the tempo, with every default filled in.
 *
 * @internal
 */
export interface Setting {
  readonly model: EffortModel;
  readonly level: PlayerLike;
  readonly valved: NonNullable<SoundingOptions['valved']>;
  readonly objective: PathObjective;
  readonly tempo?: number;
}

/** Which model a call means where it does not say. */
const DEFAULT_MODEL = 'intermediate';

/**
 * Fills in the defaults of a call.
 *
 * @internal
 */
export function settingOf({
  level = 'bends',
  model = toPlayer(level).model ?? DEFAULT_MODEL,
  valved = false,
  objective = 'total',
  tempo,
  known,
}: PathOptions): Setting {
  toPlayer(level);
  return {
    model: readEffortModel(model, known),
    level,
    valved,
    objective: requireOneOf(objective, PATH_OBJECTIVES, { what: 'what a path is best at' }),
    ...(tempo === undefined ? {} : { tempo }),
  };
}

/** What a path says of a setting. */
export function headOf(harp: Harp, { model, level, objective }: Setting): PathHead {
  return { harp, model: model.id, level, objective };
}

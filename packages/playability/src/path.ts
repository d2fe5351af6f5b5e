import type { Harp, PlayerLike, SoundingOptions } from '@reedplate/layout';
import type { OptionNames } from '@reedplate/pitch';
import type { Choice, Grip } from './choice.js';
import { inPoints } from './figures.js';
import type { Problem } from './problem.js';
import type { EffortModelLike, KnownModels } from './to-effort-model.js';
import type { Way } from './way.js';

/** What a path is best at: least effort in all, or the mildest worst step and then least effort. */
export const PATH_OBJECTIVES = Object.freeze(['total', 'worst'] as const);

/** What a path is best at; see {@link PATH_OBJECTIVES}. */
export type PathObjective = (typeof PATH_OBJECTIVES)[number];

/** How a path is searched for. */
export interface PathOptions {
  /**
   * An effort model, or the id of one in the catalogue; default that of the player, else
   * `intermediate`.
   */
  readonly model?: EffortModelLike;
  /** Who plays, by a level or as a `Player`; default `bends`. */
  readonly level?: PlayerLike;
  /** As in `SoundingOptions`; default false. */
  readonly valved?: NonNullable<SoundingOptions['valved']>;
  /** Default `total`. */
  readonly objective?: PathObjective;
  /** Felt beats a minute; default that of the line, or 100 where it has none. */
  readonly tempo?: number;
  /** Effort models and tunings of one's own that may be named by their id. */
  readonly known?: KnownModels;
}

/** The names of all options of a path. */
export const PATH_OPTIONS: OptionNames<PathOptions> = {
  model: true,
  level: true,
  valved: true,
  objective: true,
  tempo: true,
  known: true,
};

/** A line with a way to sound each of its events, and the effort of it. */
export interface LinePath {
  readonly playable: true;
  readonly harp: Harp;
  /** Id of the effort model. */
  readonly model: string;
  /** Who plays, as given. */
  readonly level: PlayerLike;
  readonly objective: PathObjective;
  /** Effort in all, in points: exact to the thousandth. */
  readonly effort: number;
  /** Effort of the worst step, in points. */
  readonly worst: number;
  /** For each event of the line what sounds it, from the low end. */
  readonly soundings: readonly Grip[];
}

/** What a path says besides its way. */
export type PathHead = Pick<LinePath, 'harp' | 'model' | 'level' | 'objective'>;

/** The path of a way that a search found. */
export function pathOf(problem: Problem, way: Way, head: PathHead): LinePath {
  const { choices } = problem.board;
  return Object.freeze({
    playable: true,
    ...head,
    effort: inPoints(way.cost),
    worst: inPoints(way.worst),
    soundings: Object.freeze(way.choices.map((index) => (choices[index] as Choice).soundings)),
  });
}

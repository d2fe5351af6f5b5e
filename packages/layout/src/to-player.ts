import { nearestOf, ReedplateError } from '@reedplate/pitch';
import type { Player } from './player.js';
import { PLAYERS } from './players.js';
import { type Sounding, TECHNIQUE_LEVELS, type TechniqueLevel } from './sounding.js';

/** What someone can play: a player, or the level that is a short word for one. */
export type PlayerLike = TechniqueLevel | Player;

/**
 * The player that a level is a short word for, or the player given: how every function takes a
 * `level`.
 *
 * @internal
 * @throws ReedplateError `OPTION_UNKNOWN` for what is neither
 * @example
 * ```ts
 * import { toPlayer } from '@reedplate/layout';
 *
 * toPlayer('natural').skills; // => [{ technique: 'natural' }]
 * toPlayer('bend' as 'bends'); // throws OPTION_UNKNOWN
 * ```
 */
export function toPlayer(level: PlayerLike): Player {
  if (isPlayer(level)) return level;
  const known = TECHNIQUE_LEVELS.find((each) => each === level);
  if (known !== undefined) return PLAYERS[known];
  throw new ReedplateError({
    code: 'OPTION_UNKNOWN',
    value: level,
    expected: `a level, ${TECHNIQUE_LEVELS.join(', ')}, or a player`,
    nearest: typeof level === 'string' ? nearestOf(level, TECHNIQUE_LEVELS) : undefined,
  });
}

function isPlayer(value: unknown): value is Player {
  return (
    typeof value === 'object' &&
    value !== null &&
    'skills' in value &&
    Array.isArray(value.skills) &&
    'splits' in value &&
    Array.isArray(value.splits)
  );
}

/** Whether a player has a sounding, by itself: what else the harp has is not asked. */
export function hasSounding({ skills }: Player, sounding: Sounding): boolean {
  const { technique, breath, hole, depth } = sounding;
  return skills.some(
    (skill) =>
      skill.technique === technique &&
      (skill.breath ?? breath) === breath &&
      (skill.holes?.includes(hole) ?? true) &&
      (skill.depths?.includes(depth) ?? true),
  );
}

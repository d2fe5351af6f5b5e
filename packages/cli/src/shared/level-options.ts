import { readInFile } from '@reedplate/files';
import {
  type PlayerLike,
  readPlayer,
  TECHNIQUE_LEVELS,
  type TechniqueLevel,
  toPlayer,
} from '@reedplate/layout';
import type { Command } from 'commander';
import type { Terminal } from '../terminal.js';

/** Words that say who plays. */
export interface LevelWords {
  readonly level: string;
  readonly player?: string;
}

/** Adds `--level` and `--player`. */
export function withLevel(command: Command, what = 'what the player can do'): Command {
  return command
    .option('--level <level>', `${what}: ${TECHNIQUE_LEVELS.join(', ')}`, 'bends')
    .option('--player <file>', 'who plays, as JSON of a player, in place of --level');
}

/**
 * The level that the words name, or the player of the file.
 *
 * @throws ReedplateError `OPTION_UNKNOWN` for a wrong level; with `where.file`, what `readPlayer` throws
 */
export function readLevel(
  { level, player }: LevelWords,
  terminal: Pick<Terminal, 'readText'>,
): PlayerLike {
  if (player !== undefined) {
    const text = terminal.readText(player);
    return readInFile(player, () => readPlayer(text));
  }
  const known = level as TechniqueLevel;
  toPlayer(known);
  return known;
}

/** Who plays, for a heading: the level, or the name of the player. */
export function sayLevel(level: PlayerLike): string {
  return typeof level === 'string' ? level : level.name;
}

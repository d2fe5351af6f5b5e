import { TECHNIQUE_LEVELS, type TechniqueLevel } from '@reedplate/layout';
import { EFFORT_MODELS, type PathOptions } from '@reedplate/playability';
import type { Command } from 'commander';
import { readNumber } from './read-words.js';

/** Words that say who plays, and how fast. */
export interface PlayerWords {
  readonly model: string;
  readonly level?: string;
  readonly tempo?: string;
}

/** Adds `--model`, `--level` and `--tempo`. */
export function withPlayerOptions(command: Command): Command {
  const models = EFFORT_MODELS.map(({ id }) => id).join(', ');
  return command
    .option('--model <model>', `whose effort counts: ${models}`, 'intermediate')
    .option('--level <level>', `what the player can do: ${TECHNIQUE_LEVELS.join(', ')}`)
    .option('--tempo <bpm>', 'felt beats a minute, instead of the tempo of the line');
}

/** The player that the words name; wrong words are refused where they are used. */
export function readPlayer({ model, level, tempo }: PlayerWords): PathOptions {
  return {
    model,
    ...(level === undefined ? {} : { level: level as TechniqueLevel }),
    ...(tempo === undefined ? {} : { tempo: readNumber(tempo, 'felt beats a minute') }),
  };
}

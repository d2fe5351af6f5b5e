import { EFFORT_MODELS, type PathOptions } from '@reedplate/playability';
import type { Command } from 'commander';
import type { Terminal } from '../terminal.js';
import { type LevelWords, readLevel, withLevel } from './level-options.js';
import { readModelWord } from './read-model.js';
import { readNumber } from './read-words.js';

/** Words that say who plays, and how fast. */
export interface PlayerWords extends LevelWords {
  readonly model?: string;
  readonly tempo?: string;
}

/** What `--model` says in every help. */
export const MODEL_HELP = `whose effort counts: ${EFFORT_MODELS.map(({ id }) => id).join(', ')}; or a JSON file; that of the player, else intermediate, without it`;

/** Adds `--model`, `--level`, `--player` and `--tempo`. */
export function withPlayerOptions(command: Command): Command {
  return withLevel(command.option('--model <model>', MODEL_HELP)).option(
    '--tempo <bpm>',
    'felt beats a minute, instead of the tempo of the line',
  );
}

/** The player that the words name; wrong words are refused where they are used. */
export function readPlayer(words: PlayerWords, terminal: Terminal): PathOptions {
  const { model, tempo } = words;
  return {
    level: readLevel(words, terminal),
    ...(model === undefined ? {} : { model: readModelWord(model, terminal) }),
    ...(tempo === undefined ? {} : { tempo: readNumber(tempo, 'felt beats a minute') }),
  };
}

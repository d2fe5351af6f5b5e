import { TECHNIQUE_LEVELS, type TechniqueLevel } from '@reedplate/layout';
import { ReedplateError, requireSome } from '@reedplate/pitch';
import { EFFORT_MODELS, type PathOptions } from '@reedplate/playability';
import type { Command } from 'commander';

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

/**
 * A number that a word names.
 *
 * @throws ReedplateError `NUMBER_RANGE` with the word as it was typed
 */
export function readNumber(word: string, what: string): number {
  if (/^-?\d{1,15}(?:\.\d{1,15})?$/u.test(word)) return Number(word);
  throw new ReedplateError({ code: 'NUMBER_RANGE', value: word, expected: `${what}, a number` });
}

/**
 * Words apart by commas.
 *
 * @throws ReedplateError `LIST_EMPTY` where there is none
 */
export function readList(words: string): readonly string[] {
  const listed = words.split(',').map((word) => word.trim());
  return requireSome(
    listed.filter((word) => word !== ''),
    'one word, words apart by commas',
  );
}

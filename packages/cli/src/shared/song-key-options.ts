import type { Harp } from '@reedplate/layout';
import { type Key, parseKey, ReedplateError } from '@reedplate/pitch';
import { songKeyOf } from '@reedplate/position';
import type { Command } from 'commander';
import { readWholeNumber } from './read-words.js';

/** Words that name the key of a song, for verbs that know the harp. */
export interface SongKeyWords {
  readonly key?: string;
  readonly position?: string;
}

/** Adds `--key` and `--position`. */
export function withSongKeyOptions(command: Command): Command {
  return command
    .option('--key <key>', 'key of the song')
    .option('--position <number>', 'position the song is played in, 1 to 12, instead of --key');
}

/**
 * The key of the song, by its name or by the position it is played in; `undefined` for neither.
 *
 * @throws ReedplateError `USAGE` for both, `KEY_UNKNOWN`, `NUMBER_RANGE`
 */
export function readSongKey({ key, position }: SongKeyWords, harp: Harp): Key | undefined {
  if (position === undefined) return key === undefined ? undefined : parseKey(key);
  if (key === undefined) {
    return songKeyOf(harp, readWholeNumber(position, { min: 1, max: 12, what: 'a position' }));
  }
  throw new ReedplateError({
    code: 'USAGE',
    value: `--key ${key} --position ${position}`,
    expected: 'one of --key and --position, not both',
  });
}

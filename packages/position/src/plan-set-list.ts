import {
  type KeyLike,
  type KeyName,
  type OptionNames,
  ReedplateError,
  requireOptions,
  requireSome,
  toKey,
} from '@reedplate/pitch';
import { fewestChanges } from './fewest-changes.js';
import {
  type HarpPick,
  harpsOf,
  PLAYER_OPTIONS,
  type PlayerOptions,
  pickHarps,
  SONG_OPTIONS,
  type SongOptions,
} from './pick.js';
import { requireSong } from './require-song.js';

/** A song of a set; a song that changes key and harps may stand as several. */
export interface SetListSong extends SongOptions {
  readonly key: KeyLike;
  readonly title?: string;
}

/** A song with the harp to play it on. */
export interface SetListStep {
  /** Place in the set, from 0. */
  readonly index: number;
  readonly title?: string;
  readonly key: KeyName;
  readonly pick: HarpPick;
  /** Whether another harp is picked up for it; false for the first song. */
  readonly changes: boolean;
}

/** Harps for a whole set. */
export interface SetListPlan {
  readonly steps: readonly SetListStep[];
  /** Times the harp changes. */
  readonly changes: number;
  /** Sum of the weights of the picks. */
  readonly weight: number;
}

/** How {@link planSetList} plans. */
export interface SetListOptions extends PlayerOptions {
  /**
   * How good a harp must be for a song, as a share of the weight of the best one, 0 to 1
   * (inclusive); default 0.85. At 1 every song has its best harp; lower, harps change less.
   */
  readonly leastShare?: number;
}

const SET_OPTIONS: OptionNames<SetListOptions> = { ...PLAYER_OPTIONS, leastShare: true };
const SET_SONG: OptionNames<SetListSong> = { ...SONG_OPTIONS, key: true, title: true };

/**
 * Harps for a set list in order, with the fewest changes of harp, and among those plans the
 * one whose picks weigh most. Exact, by dynamic programming.
 *
 * @param songs at least one
 * @throws ReedplateError `LIST_EMPTY` without a song or without a harp, `NUMBER_RANGE` for the
 * share, or what {@link pickHarps} throws
 * @example
 * ```ts
 * import { planSetList } from '@reedplate/position';
 *
 * const songs = [{ key: 'G' }, { key: 'C' }, { key: 'A' }] as const;
 * planSetList(songs).steps.map(({ pick }) => pick.harp.key); // => ['C', 'C', 'D']
 * planSetList(songs).changes; // => 1
 * planSetList(songs, { leastShare: 1 }).changes; // => 2
 * planSetList([]); // throws LIST_EMPTY
 * ```
 */
export function planSetList(
  songs: readonly SetListSong[],
  options: SetListOptions = {},
): SetListPlan {
  const { leastShare = 0.85, ...player } = requireOptions(options, SET_OPTIONS, 'planSetList');
  requireShare(leastShare);
  requireSome(songs, 'one song');
  const harps = harpsOf(player);
  const choices = songs.map((song, at) => {
    const { key, title: _, ...rest } = requireSong(song, SET_SONG, `songs[${at}]`);
    return goodPicks(pickHarps(key, { ...player, ...rest, own: harps }), leastShare);
  });
  const path = fewestChanges(choices);
  const steps = path.map((pick, index): SetListStep => {
    const { title, key } = songs[index] as SetListSong;
    const changes = index > 0 && path[index - 1]?.harp !== pick.harp;
    const song = { ...(title === undefined ? {} : { title }), key: toKey(key).name };
    return Object.freeze({ index, ...song, pick, changes });
  });
  return Object.freeze({
    steps: Object.freeze(steps),
    changes: steps.filter(({ changes }) => changes).length,
    weight: path.reduce((sum, { weight }) => sum + weight, 0),
  });
}

function goodPicks(picks: readonly HarpPick[], leastShare: number): readonly HarpPick[] {
  const least = leastShare * (picks[0]?.weight ?? 0);
  return picks.filter(({ weight }) => weight >= least);
}

function requireShare(share: unknown): void {
  if (typeof share === 'number' && share >= 0 && share <= 1) return;
  throw new ReedplateError({ code: 'NUMBER_RANGE', value: share, expected: 'a share, 0 to 1' });
}

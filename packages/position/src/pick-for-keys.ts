import type { Harp } from '@reedplate/layout';
import {
  type KeyLike,
  type OptionNames,
  ReedplateError,
  requireOptions,
  requireSome,
} from '@reedplate/pitch';
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

/** A part of a song in one key. */
export interface KeySection extends SongOptions {
  readonly key: KeyLike;
  /** Length against the other sections, above 0; default 1. */
  readonly length?: number;
}

/** One harp for a song that changes key. */
export interface KeysPick {
  readonly harp: Harp;
  /** Mean weight over the sections, each by its length, 0 to 1. */
  readonly weight: number;
  /** How the harp suits each section, in their order. */
  readonly sections: readonly HarpPick[];
}

const SECTION: OptionNames<KeySection> = { ...SONG_OPTIONS, key: true, length: true };

/**
 * The harps for a song that changes key and leaves no time to change harps, the best first.
 *
 * @param sections at least one
 * @throws ReedplateError `LIST_EMPTY` without a section or without a harp, `NUMBER_RANGE` for a length, or what
 * {@link pickHarps} throws
 * @example
 * ```ts
 * import { pickForKeys } from '@reedplate/position';
 *
 * const [best] = pickForKeys([{ key: 'G', length: 3 }, { key: 'C' }]);
 * best?.harp.key; // => 'C'
 * best?.sections.map((section) => section.position); // => [2, 1]
 * pickForKeys([]); // throws LIST_EMPTY
 * ```
 */
export function pickForKeys(
  sections: readonly KeySection[],
  options: PlayerOptions = {},
): readonly KeysPick[] {
  requireOptions(options, PLAYER_OPTIONS, 'pickForKeys');
  requireSome(sections, 'one section');
  const lengths = sections.map((section, at) =>
    requireLength(requireSong(section, SECTION, `sections[${at}]`).length ?? 1),
  );
  const total = lengths.reduce((sum, length) => sum + length, 0);
  const picks = harpsOf(options).map((harp): KeysPick => {
    const perSection = sections.map((section) => pickOf(harp, section, options));
    const weight = perSection.reduce(
      (sum, pick, index) => sum + (pick.weight * (lengths[index] as number)) / total,
      0,
    );
    return Object.freeze({ harp, weight, sections: Object.freeze(perSection) });
  });
  return Object.freeze(picks.sort((a, b) => b.weight - a.weight));
}

function pickOf(harp: Harp, section: KeySection, options: PlayerOptions): HarpPick {
  const { key, length: _, ...song } = section;
  const [pick] = pickHarps(key, { ...options, ...song, own: [harp] });
  // One harp was given, so one pick came back.
  return pick as HarpPick;
}

function requireLength(length: unknown): number {
  if (typeof length === 'number' && length > 0 && Number.isFinite(length)) return length;
  const expected = 'a length above 0';
  throw new ReedplateError({ code: 'NUMBER_RANGE', value: length, expected });
}

import type { Chart } from '@reedplate/form';
import {
  type Harp,
  type HarpLike,
  type Hole,
  type KnownTunings,
  makeHarp,
  type PlayerLike,
  type SoundingOptions,
  type TuningLike,
  toHarp,
  toTuning,
} from '@reedplate/layout';
import { type Line, requireNotes } from '@reedplate/line';
import {
  type Key,
  type KeyLike,
  type OptionNames,
  parseScale,
  requireOptions,
  requireSome,
  type Scale,
  type ScaleLike,
  TWELVE_KEYS,
  toKey,
} from '@reedplate/pitch';
import { type ChordShare, chordShare, chordToneEase, wholeChordShare } from './chord-share.js';
import { easiestOf } from './easiest.js';
import { homeEase } from './home-ease.js';
import { positionOf } from './keys.js';
import { type LineShares, lineShares } from './line-shares.js';
import type { PositionNumber } from './position.js';
import { type ScaleShare, scaleShare } from './scale-share.js';
import { type SongChord, songChords } from './song-chords.js';
import { type CriteriaWeights, readWeights, weightedMean } from './weighing.js';
import type { PickCriterion } from './weights.js';

/** What the song is, besides its key. */
export interface SongOptions {
  /** Its chords; default `numerals`. */
  readonly chart?: Chart;
  /**
   * Its chords as Roman numerals, in equal shares of the time; default those of the form `basic`,
   * in minor for a minor key.
   */
  readonly numerals?: readonly string[];
  /** Scale played, by name, above the song's tonic; default `blues`. */
  readonly scale?: ScaleLike;
  /** A line to be played; default none. */
  readonly line?: Line;
}

/** Who plays, and on which harps. */
export interface PlayerOptions {
  /** Who plays, by a level or as a `Player`; default `bends`. */
  readonly level?: PlayerLike;
  /** As in `SoundingOptions` of `@reedplate/layout`; default false. */
  readonly valved?: boolean | readonly Hole[];
  /**
   * Harps to choose from, at least one, as `C` or `low F natural-minor` or as data; default one of
   * each of the twelve keys.
   */
  readonly own?: readonly HarpLike[];
  /** Tuning of the twelve harps where `own` is not given; default `standard`. */
  readonly tuning?: TuningLike;
  /** Tunings of one's own that `own` and `tuning` may name by their id. */
  readonly known?: KnownTunings;
  /** What the criteria count for, each from 0, not all 0; default {@link PICK_WEIGHTS}. */
  readonly weights?: Partial<Readonly<Record<PickCriterion, number>>>;
}

/** What {@link pickHarps} goes by. */
export type PickOptions = SongOptions & PlayerOptions;

/** The names of what a song is, besides its key. */
export const SONG_OPTIONS: OptionNames<SongOptions> = {
  chart: true,
  numerals: true,
  scale: true,
  line: true,
};

/** The names of what tells who plays, and on which harps. */
export const PLAYER_OPTIONS: OptionNames<PlayerOptions> = {
  level: true,
  valved: true,
  own: true,
  tuning: true,
  known: true,
  weights: true,
};

const PICK_OPTIONS: OptionNames<PickOptions> = { ...SONG_OPTIONS, ...PLAYER_OPTIONS };

/** A harp to play a song on, with the reasons. */
export interface HarpPick {
  readonly harp: Harp;
  readonly position: PositionNumber;
  /** How well it suits, 0 to 1: the mean of the criteria, weighed by {@link PICK_WEIGHTS}. */
  readonly weight: number;
  /** The chords of the song, the longest sounding first. */
  readonly chords: readonly ChordShare[];
  readonly scale: ScaleShare;
  /** Present where a line was given. */
  readonly line?: LineShares;
}

/**
 * The harps for a song, the best first, each with its reasons as data: how it has the tones of
 * every chord, which chords can be played whole, and what is missing of the scale and the line. On
 * a tie the lower position comes first, then the order of `own`.
 *
 * @throws ReedplateError `KEY_UNKNOWN`, `SCALE_UNKNOWN`, `TUNING_UNKNOWN`, `HARP_INVALID` for a
 * harp owned, `LIST_EMPTY` for `own` without a harp, `OPTION_UNKNOWN` for a wrong level,
 * `NUMERAL_UNKNOWN`, `CHART_INVALID` without a chord, `LINE_EMPTY`, `NUMBER_RANGE` for the weights
 * @example
 * ```ts
 * import { pickHarps } from '@reedplate/position';
 *
 * const [best] = pickHarps('G');
 * best?.harp.key; // => 'C'
 * best?.position; // => 2
 * best?.chords[0]?.whole; // => { breath: 'draw', from: 1, to: 5 }
 * best?.chords.filter((chord) => chord.whole === null).map((chord) => chord.symbol); // => ['D7']
 * pickHarps('G', { own: ['D', 'low F'] }).map((pick) => pick.position); // => [3, 12]
 * pickHarps('G', { scale: 'blue' }); // throws SCALE_UNKNOWN
 * pickHarps('G', { own: [] }); // throws LIST_EMPTY
 * ```
 */
export function pickHarps(songKey: KeyLike, options: PickOptions = {}): readonly HarpPick[] {
  const { level = 'bends', valved = false } = requireOptions(options, PICK_OPTIONS, 'pickHarps');
  const song = readSong(songKey, options);
  const weights = readWeights(options.weights);
  const picks = harpsOf(options).map((harp) => judge(harp, song, { level, valved }, weights));
  return Object.freeze(picks.sort((a, b) => b.weight - a.weight || a.position - b.position));
}

/** The harps that a player chooses from. */
export function harpsOf({ own, tuning = 'standard', known }: PlayerOptions): readonly Harp[] {
  if (own !== undefined) return requireSome(own, 'one harp').map((harp) => toHarp(harp, known));
  const made = toTuning(tuning, known);
  return TWELVE_KEYS.map(({ tonic }) => makeHarp(tonic, { tuning: made }));
}

interface Song {
  readonly key: Key;
  readonly chords: readonly SongChord[];
  readonly scale: Scale;
  readonly line: Line | undefined;
}

function readSong(songKey: KeyLike, { chart, numerals, scale = 'blues', line }: SongOptions): Song {
  const key = toKey(songKey);
  if (line !== undefined) requireNotes(line);
  return { key, chords: songChords(key, chart ?? numerals), scale: parseScale(scale), line };
}

function judge(
  harp: Harp,
  song: Song,
  ability: SoundingOptions,
  weights: CriteriaWeights,
): HarpPick {
  const easiest = easiestOf(harp, ability);
  const chords = song.chords.map((songChord) => chordShare(harp, easiest, songChord));
  const scale = scaleShare(easiest, song.key, song.scale);
  const line = song.line === undefined ? undefined : lineShares(easiest, song.line);
  return Object.freeze({
    harp,
    position: positionOf(harp, song.key),
    weight: weightedMean(weights, {
      chordTones: chordToneEase(chords),
      wholeChords: wholeChordShare(chords),
      scale: scale.ease,
      home: homeEase(harp, easiest, song.key),
      line: line?.ease,
    }),
    chords: Object.freeze(chords),
    scale,
    ...(line === undefined ? {} : { line }),
  });
}

import type { Chart } from '@reedplate/form';
import {
  type Harp,
  type Hole,
  makeHarp,
  type SoundingOptions,
  type Technique,
  type TechniqueLevel,
  type Tuning,
} from '@reedplate/layout';
import {
  type ChordDegree,
  type Key,
  type NoteName,
  parseScale,
  TWELVE_KEYS,
} from '@reedplate/pitch';
import { type KeyLike, positionOf, readKey } from './keys.js';
import type { PositionNumber } from './position.js';
import { reachOf } from './reach.js';
import { type ScaleFit, scaleFit } from './scale-fit.js';
import { type SongChord, songChords } from './song-chords.js';
import { CRITERIA_WEIGHTS } from './weights.js';
import { type WholeChord, wholeChordOn } from './whole-chord.js';

/** What {@link pickHarps} goes by. */
export interface PickOptions {
  /** What the player can do; default `bends`. */
  readonly level?: TechniqueLevel;
  /** As in `SoundingOptions`; default false. */
  readonly valved?: boolean | readonly Hole[];
  /** Chords of the song; default the basic twelve bars, in sevenths or minor as the key says. */
  readonly chart?: Chart;
  /** Scale played, by name, above the song's tonic; default `blues`. */
  readonly scale?: string;
  /** Harps to choose from; default one of each of the twelve keys. */
  readonly own?: readonly Harp[];
  /** Tuning of the twelve harps where `own` is not given; default `standard`. */
  readonly tuning?: string | Tuning;
}

/** A tone of a chord, as a harp has it. */
export interface ToneFit {
  readonly degree: ChordDegree;
  readonly name: NoteName;
  /** The easiest way to sound it in any octave. */
  readonly best: Technique | 'missing';
  /** Mean ease over the octaves of the harp, 0 (missing) to 1 (natural in all). */
  readonly ease: number;
}

/** A chord of the song, as a harp has it. */
export interface ChordFit {
  readonly symbol: string;
  /** Share of the song's time, 0 to 1. */
  readonly share: number;
  readonly tones: readonly ToneFit[];
  /** Holes that sound the triad at once, with no other note; null where there are none. */
  readonly whole: WholeChord | null;
}

/** A harp to play a song on, with the reasons. */
export interface HarpPick {
  readonly harp: Harp;
  readonly position: PositionNumber;
  /** How well it suits, 0 to 1; see {@link CRITERIA_WEIGHTS}. */
  readonly weight: number;
  /** The chords of the song, the longest sounding first. */
  readonly chords: readonly ChordFit[];
  readonly scale: ScaleFit;
}

/**
 * The harps for a song, the best first, each with its reasons as data: how it has the tones of
 * every chord, which chords can be played whole, and what is missing of the scale. On a tie the
 * lower position comes first, then the order of `own`.
 *
 * @throws ReedplateError `KEY_UNKNOWN`, `SCALE_UNKNOWN`, `TUNING_UNKNOWN`, `OPTION_UNKNOWN` for a
 * wrong level, `CHART_INVALID` for a chart without a chord
 * @example
 * ```ts
 * import { pickHarps } from '@reedplate/position';
 *
 * const [best] = pickHarps('G');
 * best.harp.key; // => 'C'
 * best.position; // => 2
 * best.chords[0].whole; // => { breath: 'draw', from: 1, to: 5 }
 * best.chords.filter((chord) => chord.whole === null).map((chord) => chord.symbol); // => ['D7']
 * pickHarps('H'); // throws KEY_UNKNOWN
 * ```
 */
export function pickHarps(songKey: KeyLike, options: PickOptions = {}): readonly HarpPick[] {
  const { chart, scale = 'blues', tuning = 'standard', level = 'bends', valved = false } = options;
  const key = readKey(songKey);
  const song = { key, chords: songChords(key, chart), scale: parseScale(scale) };
  const { own = TWELVE_KEYS.map(({ tonic }) => makeHarp(tonic, { tuning })) } = options;
  const picks = own.map((harp) => judge(harp, song, { level, valved }));
  return Object.freeze(picks.sort((a, b) => b.weight - a.weight || a.position - b.position));
}

interface Song {
  readonly key: Key;
  readonly chords: readonly SongChord[];
  readonly scale: ReturnType<typeof parseScale>;
}

function judge(harp: Harp, song: Song, ability: SoundingOptions): HarpPick {
  const chords = song.chords.map((songChord) => chordFit(harp, songChord, ability));
  const scale = scaleFit(harp, song.key, song.scale, ability);
  return Object.freeze({
    harp,
    position: positionOf(harp, song.key),
    weight: weigh(chords, scale),
    chords: Object.freeze(chords),
    scale,
  });
}

function chordFit(harp: Harp, { chord, share }: SongChord, ability: SoundingOptions): ChordFit {
  const tones = chord.tones.map(({ degree, name, pitchClass }): ToneFit => {
    return Object.freeze({ degree, name, ...reachOf(harp, pitchClass, ability) });
  });
  const whole = wholeChordOn(harp, chord) ?? null;
  return Object.freeze({ symbol: chord.symbol, share, tones: Object.freeze(tones), whole });
}

function weigh(chords: readonly ChordFit[], scale: ScaleFit): number {
  let chordTones = 0;
  let wholeChords = 0;
  for (const { share, tones, whole } of chords) {
    chordTones += share * mean(tones.map(({ ease }) => ease));
    wholeChords += whole === null ? 0 : share;
  }
  return (
    CRITERIA_WEIGHTS.chordTones * chordTones +
    CRITERIA_WEIGHTS.wholeChords * wholeChords +
    CRITERIA_WEIGHTS.scale * scale.ease
  );
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
}

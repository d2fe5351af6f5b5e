import type { Harp, Technique } from '@reedplate/layout';
import type { ChordDegree, NoteName } from '@reedplate/pitch';
import type { Easiest } from './easiest.js';
import { reachOf } from './reach.js';
import type { SongChord } from './song-chords.js';
import { type WholeChord, wholeChordOn } from './whole-chord.js';

/** A tone of a chord, as a harp has it. */
export interface ToneEase {
  readonly degree: ChordDegree;
  readonly name: NoteName;
  /** The easiest way to sound it in any octave. */
  readonly best: Technique | 'missing';
  /** Mean ease over the octaves of the harp, 0 (missing) to 1 (unbent in all). */
  readonly ease: number;
}

/** A chord of the song, as a harp has it. */
export interface ChordShare {
  readonly symbol: string;
  /** Share of the song's time, 0 to 1. */
  readonly share: number;
  readonly tones: readonly ToneEase[];
  /** Holes that sound the triad at once, with no other note; null where there are none. */
  readonly whole: WholeChord | null;
}

/** How a harp has a chord of the song. */
export function chordShare(harp: Harp, easiest: Easiest, { chord, share }: SongChord): ChordShare {
  const tones = chord.tones.map(({ degree, name, pitchClass }): ToneEase => {
    return Object.freeze({ degree, name, ...reachOf(easiest, pitchClass) });
  });
  const whole = wholeChordOn(harp, chord, easiest.hasNatural) ?? null;
  return Object.freeze({ symbol: chord.symbol, share, tones: Object.freeze(tones), whole });
}

/** Mean ease of the tones of all chords, each chord by its share of the time. */
export function chordToneEase(chords: readonly ChordShare[]): number {
  return chords.reduce((sum, { share, tones }) => sum + share * meanEase(tones), 0);
}

/** Share of the time in which the chord can be played whole. */
export function wholeChordShare(chords: readonly ChordShare[]): number {
  return chords.reduce((sum, { share, whole }) => sum + (whole === null ? 0 : share), 0);
}

function meanEase(tones: readonly ToneEase[]): number {
  return tones.reduce((sum, { ease }) => sum + ease, 0) / tones.length;
}

import type { Technique } from '@reedplate/layout';

/**
 * What a tone counts for, by the easiest way to sound it: 1 for a natural note. Design choice, no
 * source.
 */
export const EASE_OF_TECHNIQUE: Readonly<Record<Technique, number>> = Object.freeze({
  natural: 1,
  bend: 0.5,
  'valved-bend': 0.4,
  overblow: 0.25,
  overdraw: 0.2,
});

/**
 * What the criteria of a pick count for; they add up to 1. Without a line its part falls to the
 * others in proportion. Design choice, no source.
 */
export const CRITERIA_WEIGHTS = Object.freeze({
  /** Chord tones, over all octaves of the harp. */
  chordTones: 0.4,
  /** Chords that can be played whole, as neighbouring holes on one breath. */
  wholeChords: 0.3,
  /** Notes of the scale, over all octaves of the harp. */
  scale: 0.3,
});

/** Bars of each chord in the basic twelve bars: what a song is taken to be without a chart. */
export const TWELVE_BARS = Object.freeze({
  major: Object.freeze([
    ['I7', 8],
    ['IV7', 3],
    ['V7', 1],
  ] as const),
  minor: Object.freeze([
    ['i7', 8],
    ['iv7', 3],
    ['V7', 1],
  ] as const),
});

import type { Technique } from '@reedplate/layout';

/**
 * What a tone counts for, by the easiest way to sound it: 1 for an unbent note. Design choice, no
 * source.
 */
export const EASE_OF_TECHNIQUE: Readonly<Record<Technique, number>> = Object.freeze({
  natural: 1,
  bend: 0.5,
  'valved-bend': 0.4,
  overblow: 0.25,
  overdraw: 0.2,
});

/** What a pick is weighed by. */
export type PickCriterion = 'chordTones' | 'wholeChords' | 'scale' | 'home' | 'line';

/**
 * What the criteria of a pick count for, in proportion to each other. Design choice, no source.
 *
 * - `chordTones`: ease of the chord tones over all octaves of the harp, each chord by its time;
 * - `wholeChords`: share of the time in which the chord lies on neighbouring holes of one breath;
 * - `scale`: ease of the scale's notes over all octaves of the harp;
 * - `home`: half for a tonic chord that can be played whole, half for an unbent fifth above the tonic;
 * - `line`: ease of a given line; left out without one.
 */
export const PICK_WEIGHTS: Readonly<Record<PickCriterion, number>> = Object.freeze({
  chordTones: 0.35,
  wholeChords: 0.25,
  scale: 0.25,
  home: 0.15,
  line: 1,
});

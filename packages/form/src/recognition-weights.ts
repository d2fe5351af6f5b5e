/**
 * What a difference costs for a whole bar, when a tune is compared with a form. Design choice, no
 * source: a wrong root counts as a wrong bar, anything else as less, the more so the less it hides
 * which form is played.
 */
export const RECOGNITION_WEIGHTS = Object.freeze({
  /** Chords on different roots. */
  root: 1,
  /** Major and minor third on the same root. */
  third: 0.5,
  /** Sevenths or fifths that contradict each other: C7 and Cmaj7. */
  colour: 0.25,
  /** No chord where the form has one, or the reverse. */
  break: 0.25,
  /** The same chord with more or fewer tones: C, C7 and C9. */
  extension: 0.1,
  /** A bar that one of the two has not. */
  gap: 1,
});

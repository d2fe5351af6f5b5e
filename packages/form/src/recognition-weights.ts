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

/**
 * Share of the bars that must agree, 0 to 1, for a form to be called near. Chosen from two
 * distributions that `docs/forms.md` reports: of 36 annotated blues choruses whose tonic was found,
 * none agrees less than 0.67; of charts of eight bars and more drawn at random, 19 in 20 agree no
 * more than 0.53.
 */
export const LEAST_FORM_AGREEMENT = 0.6;

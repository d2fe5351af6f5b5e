/** Ornaments that a variation can add. */
export const ORNAMENTS = Object.freeze(['grace', 'scoop', 'shake'] as const);

/** An ornament; see {@link ORNAMENTS}. */
export type Ornament = (typeof ORNAMENTS)[number];

/**
 * A way to vary a phrase. All keep the bars and the chords, but for `sequenced`, which takes the chords it
 * is given, and `minor`, which takes those of the minor key.
 *
 * - `sequenced`: said again on each chord of a harmony, moved with its root;
 * - `displaced`: so many felt beats later, earlier under 0; what leaves its bars is left out;
 * - `longer`, `shorter`: notes held until the next, at most twice as long; or half as long;
 * - `thinned`: the first note, the last, and those that begin on a beat;
 * - `ornamented`: a grace note a semitone below, a scoop, or a shake with the chord tone above, on each
 *   note of a beat and more;
 * - `answered`: a response with the rhythm of the call, whose second half comes down the chord to its root;
 * - `minor`: the chords and the tones of the minor key.
 */
export type PhraseVariation =
  | { readonly way: 'sequenced'; readonly harmony: string }
  | { readonly way: 'displaced'; readonly beats: number }
  | { readonly way: 'longer' | 'shorter' | 'thinned' | 'answered' | 'minor' }
  | { readonly way: 'ornamented'; readonly with: Ornament };

import { deepFreeze, type KeyLike, type ScaleDegree, toKey } from '@reedplate/pitch';

/**
 * Manners of playing that judge the same note differently: `blues`, where flat thirds and
 * sevenths belong; `major`, a tune in which they sound wrong; `minor`, a blues in a minor key.
 */
export const PLAYING_STYLES = Object.freeze(['blues', 'major', 'minor'] as const);

/** A manner of playing; see {@link PLAYING_STYLES}. */
export type PlayingStyle = (typeof PLAYING_STYLES)[number];

/**
 * The style that blues in a key is judged by unless another is asked for: `minor` in a minor key,
 * else `blues`. A major tune is not to be told from a blues by its key.
 *
 * @throws ReedplateError `KEY_UNKNOWN`
 * @example
 * ```ts
 * import { styleOfKey } from '@reedplate/chord-tone';
 *
 * styleOfKey('Am'); // => 'minor'
 * styleOfKey('A'); // => 'blues'
 * styleOfKey('H' as 'B'); // throws KEY_UNKNOWN
 * ```
 */
export function styleOfKey(key: KeyLike): PlayingStyle {
  return toKey(key).mode === 'minor' ? 'minor' : 'blues';
}

/** What a chord's third and seventh make of it, for judging notes outside it. */
export type ChordFamily = 'major' | 'dominant' | 'minor' | 'diminished' | 'open';

/**
 * How much a note outside the chord disturbs it, 0 (a colour) to 1 (a plain wrong note), by its
 * degree above the chord's root. Degrees that are tones of the chord at hand are never looked up.
 */
export type ChordRoughness = Readonly<Record<ScaleDegree, number>>;

/**
 * Roughness by style and family of chord.
 *
 * Ground: a semitone above a chord tone is rough, the sixth and ninth are colours, a major seventh
 * against a dominant is a clash, the flat third and seventh over a major chord belong to the blues
 * and not to a major tune (common practice, no source). The figures between 0 and 1 are a
 * design choice; only their order and whether they are 0 is used to sort shapes.
 */
export const CHORD_ROUGHNESS: Readonly<
  Record<PlayingStyle, Readonly<Record<ChordFamily, ChordRoughness>>>
> = /* @__PURE__ */ (() =>
  deepFreeze({
    blues: {
      major: row(0, 1, 0, 0.3, 0, 0.6, 0.5, 0, 0.9, 0, 0, 0.8),
      dominant: row(0, 0.8, 0, 0.3, 0, 0.6, 0.5, 0, 0.8, 0, 0, 1),
      minor: row(0, 1, 0, 0, 0.8, 0, 0.5, 0, 0.6, 0, 0, 0.7),
      diminished: row(0, 1, 0.2, 0, 0.8, 0.2, 0, 0.5, 0.3, 0, 0, 0.7),
      open: row(0, 1, 0, 0, 0, 0, 0.5, 0, 0.7, 0, 0, 0.8),
    },
    major: {
      major: row(0, 1, 0, 1, 0, 0.6, 0.9, 0, 1, 0, 0.6, 0.2),
      dominant: row(0, 1, 0, 0.9, 0, 0.6, 0.8, 0, 1, 0, 0, 1),
      minor: row(0, 1, 0, 0, 1, 0, 0.8, 0, 0.7, 0, 0, 0.7),
      diminished: row(0, 1, 0.2, 0, 1, 0.2, 0, 0.6, 0.3, 0, 0, 0.8),
      open: row(0, 1, 0, 0.6, 0, 0.2, 0.8, 0, 0.9, 0, 0.3, 0.5),
    },
    minor: {
      major: row(0, 0.8, 0, 0.5, 0, 0.6, 0.6, 0, 0.7, 0, 0, 0.8),
      dominant: row(0, 0.5, 0, 0.3, 0, 0.6, 0.5, 0, 0.5, 0, 0, 1),
      minor: row(0, 1, 0, 0, 1, 0, 0.5, 0, 0.5, 0.2, 0, 0.6),
      diminished: row(0, 1, 0.2, 0, 0.9, 0.2, 0, 0.5, 0.2, 0, 0, 0.7),
      open: row(0, 1, 0, 0, 0.5, 0, 0.5, 0, 0.5, 0.2, 0, 0.8),
    },
  } as const))();

/** One row of roughness, from the root up by semitones. */
// biome-ignore format: one argument a semitone
function row(
  r1: number, rb2: number, r2: number, rb3: number, r3: number, r4: number,
  rb5: number, r5: number, rb6: number, r6: number, rb7: number, r7: number,
): ChordRoughness {
  return Object.freeze({
    '1': r1, b2: rb2, '2': r2, b3: rb3, '3': r3, '4': r4,
    b5: rb5, '5': r5, b6: rb6, '6': r6, b7: rb7, '7': r7,
  });
}

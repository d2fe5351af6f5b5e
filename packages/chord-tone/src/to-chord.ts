import { type Chord, type ChordLike, parseChord, requireChord } from '@reedplate/pitch';

/**
 * The chord itself, given as a chord, by its symbol or as tonal gives it. A chord stays the same
 * object, so that what was found for it is found again.
 *
 * @internal
 * @throws ReedplateError `CHORD_UNKNOWN`
 * @example
 * ```ts
 * import { toChord } from '@reedplate/chord-tone';
 *
 * toChord('Gm7').root; // => 'G'
 * toChord(toChord('Gm7')).symbol; // => 'Gm7'
 * toChord('H7'); // throws CHORD_UNKNOWN
 * ```
 */
export function toChord(chord: ChordLike): Chord {
  return isChord(chord) ? requireChord(chord) : parseChord(chord);
}

function isChord(chord: ChordLike): chord is Chord {
  return (
    typeof chord === 'object' && chord !== null && 'tones' in chord && Array.isArray(chord.tones)
  );
}

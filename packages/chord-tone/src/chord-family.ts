import { type Chord, type ChordDegree, requireChord } from '@reedplate/pitch';
import type { ChordFamily } from './styles.js';

/**
 * The family of a chord: `dominant` with a major third and flat seventh, `major` with a major
 * third and none, `minor` with a minor third and perfect fifth, `diminished` with a minor third
 * and flat fifth, `open` without a third (suspended and power chords).
 *
 * @throws ReedplateError `CHORD_UNKNOWN` for what is no chord
 * @example
 * ```ts
 * import { chordFamily } from '@reedplate/chord-tone';
 * import { parseChord } from '@reedplate/pitch';
 *
 * chordFamily(parseChord('G13')); // => 'dominant'
 * chordFamily(parseChord('G7sus4')); // => 'open'
 * ```
 */
export function chordFamily(chord: Pick<Chord, 'tones'>): ChordFamily {
  const { tones } = requireChord(chord);
  const degrees = new Set<ChordDegree>(tones.map(({ degree }) => degree));
  if (degrees.has('3')) return degrees.has('b7') ? 'dominant' : 'major';
  if (!degrees.has('b3')) return 'open';
  return degrees.has('b5') ? 'diminished' : 'minor';
}

import type { Key } from './key.js';
import { type NoteName, readNoteName, spellOnStep } from './note-name.js';
import { type PitchClass, toPitchClass } from './pitch-class.js';

/**
 * Staff step of each semitone above the tonic: the blues reads its chromatic notes as flats of
 * the degree above (♭3, ♭5, ♭7), in major and minor alike. Common practice, no source.
 */
const STEP_OF_SEMITONE = [0, 1, 1, 2, 2, 3, 4, 4, 5, 5, 6, 6] as const;

/** What a note outside any key is called where its spelling in the key would be a double one. */
const PLAIN_NAMES = [
  'C',
  'Db',
  'D',
  'Eb',
  'E',
  'F',
  'F#',
  'G',
  'Ab',
  'A',
  'Bb',
  'B',
] as const satisfies readonly NoteName[];

/**
 * Spells a pitch class in a key: degrees 1 ♭2 2 ♭3 3 4 ♭5 5 ♭6 6 ♭7 7 above its tonic. A note
 * that would need a double sharp or flat takes its plain name instead.
 *
 * @param key default C major, which gives C Db D Eb E F Gb G Ab A Bb B
 * @example
 * ```ts
 * import { parseKey, spell } from '@reedplate/pitch';
 *
 * spell(1, parseKey('A')); // => 'C#'
 * spell(1, parseKey('Ab')); // => 'Db'
 * spell(9, parseKey('Gb')); // => 'A'
 * ```
 */
export function spell(pitchClass: PitchClass, key?: Pick<Key, 'tonic' | 'pitchClass'>): NoteName {
  const tonic = readNoteName(key?.tonic ?? 'C');
  const semitones = toPitchClass(pitchClass - (tonic?.pitchClass ?? 0));
  const strict = spellOnStep(pitchClass, (tonic?.step ?? 0) + (STEP_OF_SEMITONE[semitones] ?? 0));
  return strict === undefined || strict.length > 2 ? plainName(pitchClass) : strict;
}

/** The usual name of a pitch class outside any key: F# and flats. */
export function plainName(pitchClass: PitchClass): NoteName {
  return PLAIN_NAMES[pitchClass];
}

import { type Key, type KeyName, toKey } from './key.js';
import { type NoteName, parseNoteName, spellOnStep } from './note-name.js';
import { type PitchClass, toPitchClass } from './pitch-class.js';
import { plainName } from './plain-name.js';

/**
 * Staff step of each semitone above the tonic: the blues reads its chromatic notes as flats of
 * the degree above (♭3, ♭5, ♭7), in major and minor alike. Common practice, no source.
 */
const STEP_OF_SEMITONE = [0, 1, 1, 2, 2, 3, 4, 4, 5, 5, 6, 6] as const;

/**
 * Spells a pitch class in a key: degrees 1 ♭2 2 ♭3 3 4 ♭5 5 ♭6 6 ♭7 7 above its tonic. A note
 * that would need a double sharp or flat takes its plain name instead.
 *
 * @param key default C major, which gives C Db D Eb E F Gb G Ab A Bb B
 * @throws ReedplateError `NUMBER_RANGE`, `KEY_UNKNOWN`
 * @example
 * ```ts
 * import { spell } from '@reedplate/pitch';
 *
 * spell(1, 'A'); // => 'C#'
 * spell(1, 'Ab'); // => 'Db'
 * spell(9, 'Gb'); // => 'A'
 * ```
 */
export function spell(pitchClass: PitchClass, key: Key | KeyName = 'C'): NoteName {
  return spellAbove(pitchClass, toKey(key).tonic);
}

/**
 * Spells a pitch class by its degree above a root, as {@link spell} does above a tonic: the major
 * third above D is F#, whatever the key.
 *
 * @param root the root of a chord, say
 * @throws ReedplateError `NUMBER_RANGE`, `NOTE_UNKNOWN`
 * @example
 * ```ts
 * import { spellAbove } from '@reedplate/pitch';
 *
 * spellAbove(6, 'D'); // => 'F#'
 * spellAbove(6, 'Eb'); // => 'Gb'
 * ```
 */
export function spellAbove(pitchClass: PitchClass, root: NoteName): NoteName {
  const { pitchClass: from, step } = parseNoteName(root);
  const semitones = toPitchClass(pitchClass - from);
  const strict = spellOnStep(pitchClass, step + (STEP_OF_SEMITONE[semitones] ?? 0));
  return strict === undefined || strict.length > 2 ? plainName(pitchClass) : strict;
}

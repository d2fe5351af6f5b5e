import { fromSemitones } from '@tonaljs/interval';
import { transpose } from '@tonaljs/pitch-distance';
import { type KeyLike, toKey } from './key.js';
import { type NoteLike, type NoteName, parseNoteName, readNoteName } from './note-name.js';
import { type PitchClass, toPitchClass } from './pitch-class.js';
import { plainName } from './plain-name.js';

/**
 * Spells a pitch class in a key: degrees 1 ♭2 2 ♭3 3 4 ♭5 5 ♭6 6 ♭7 7 above its tonic, as blues
 * players name them in major and minor alike (common practice, no source). A note that would need a
 * double sharp or flat takes its plain name instead.
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
export function spell(pitchClass: PitchClass, key: KeyLike = 'C'): NoteName {
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
export function spellAbove(pitchClass: PitchClass, root: NoteLike): NoteName {
  const from = parseNoteName(root);
  const interval = fromSemitones(toPitchClass(toPitchClass(pitchClass) - from.pitchClass));
  const strict = readNoteName(transpose(from.name, interval));
  return strict === undefined || strict.name.length > 2 ? plainName(pitchClass) : strict.name;
}

import { requireInteger, requireOneOf } from './guard.js';
import { type Key, type KeyLike, keyOn, plainKey, TONICS, type Tonic, toKey } from './key.js';
import { type OptionNames, requireOptions } from './options.js';
import { type PitchClass, toPitchClass } from './pitch-class.js';

/** How {@link transposeKey} spells. */
export interface TransposeKeyOptions {
  /**
   * `plain` (default) takes the spelling with fewer sharps or flats: F# and flats for major keys, as
   * harps are labelled, C#, F#, G# and flats for minor ones; `alike` keeps sharps with sharps and
   * flats with flats where a band names such a key.
   */
  readonly spelling?: 'plain' | 'alike';
}

const TRANSPOSE_OPTIONS: OptionNames<TransposeKeyOptions> = { spelling: true };
const KEY_SPELLINGS = ['plain', 'alike'] as const;

/**
 * A key moved by semitones. Moving by a multiple of twelve keeps the spelling.
 *
 * @param semitones any whole number; negative moves down
 * @throws ReedplateError `NUMBER_RANGE`, `KEY_UNKNOWN`, or `OPTION_UNKNOWN` for a wrong spelling
 * @example
 * ```ts
 * import { transposeKey } from '@reedplate/pitch';
 *
 * transposeKey('G', 5).name; // => 'C'
 * transposeKey('Am', 4).name; // => 'C#m'
 * transposeKey('C#', 12).name; // => 'C#'
 * transposeKey('C#', 7).name; // => 'Ab'
 * transposeKey('C#', 7, { spelling: 'alike' }).name; // => 'G#'
 * ```
 */
export function transposeKey(
  key: KeyLike,
  semitones: number,
  options: TransposeKeyOptions = {},
): Key {
  const { spelling = 'plain' } = requireOptions(options, TRANSPOSE_OPTIONS, 'transposeKey');
  const { tonic, mode, pitchClass } = toKey(key);
  requireInteger(semitones, { what: 'semitones' });
  requireOneOf(spelling, KEY_SPELLINGS, { what: 'a spelling' });
  if (semitones % 12 === 0) return keyOn(tonic, mode);
  const moved = toPitchClass(pitchClass + (semitones % 12));
  const alike = spelling === 'alike' ? tonicSignedAs(tonic, moved) : undefined;
  return alike === undefined ? plainKey(moved, mode) : keyOn(alike, mode);
}

/** The tonic of a pitch class with the sign that `model` has, or `undefined`. */
function tonicSignedAs(model: Tonic, pitchClass: PitchClass): Tonic | undefined {
  const sign = model.slice(1);
  if (sign === '') return undefined;
  return TONICS.find(
    (tonic) => tonic.endsWith(sign) && keyOn(tonic, 'major').pitchClass === pitchClass,
  );
}

/**
 * Names, numbers, intervals, chords and Roman numerals: what every other package speaks.
 *
 * Pitches are MIDI numbers inside and spelled names at the edges; the spelling follows a key.
 *
 * @packageDocumentation
 */

// Notes

export { centsBetween, type FrequencyOptions, frequency } from './frequency.js';
export {
  HIGHEST_MIDI,
  LOWEST_MIDI,
  midi,
  noteName,
  noteNameWithOctave,
  type SpellingOptions,
} from './note.js';
export {
  type Accidental,
  LETTERS,
  type Letter,
  NOTE_NAMES,
  type NoteLike,
  type NoteName,
  type NoteNameParts,
  type NoteNameWithOctave,
  parseNoteName,
  spellOnStep,
} from './note-name.js';
export { PITCH_CLASSES, type PitchClass, toPitchClass } from './pitch-class.js';
export { plainName } from './plain-name.js';

// Keys, degrees and scales

export { type ChordDegree, degreeAbove, SCALE_DEGREES, type ScaleDegree } from './degree.js';
export {
  type Key,
  type KeyLike,
  type KeyName,
  keySignature,
  type Mode,
  parseKey,
  TONICS,
  type Tonic,
  TWELVE_KEYS,
  toKey,
} from './key.js';
export { parseScale, type Scale, type ScaleLike, scaleNames } from './scale.js';
export { spell, spellAbove } from './spell.js';
export { type TransposeKeyOptions, transposeKey } from './transpose-key.js';

// Chords and Roman numerals

export { type Chord, type ChordLike, type ChordTone, parseChord, triadOf } from './chord.js';
export { chordSuffixes } from './chord-quality.js';
export {
  type Numeral,
  type NumeralAlteration,
  type NumeralStep,
  type NumeralTarget,
  parseNumeral,
} from './numeral.js';
export { chordOfNumeral, numeralOfChord } from './realise.js';

// What tonal gives

export type { TonalChord, TonalKey, TonalNote, TonalScale } from './tonal-types.js';

// Errors

export {
  type ErrorDetails,
  type ErrorPlace,
  type ErrorRecord,
  isReedplateError,
  ReedplateError,
} from './error.js';
export { ERROR_CODES, type ErrorCode } from './error-codes.js';

// For the other packages of the house alone; see docs/architecture.md

export { requireChord } from './chord.js';
export { deepFreeze } from './deep-freeze.js';
export {
  type ChoiceOptions,
  type IntegerBounds,
  type PositiveBounds,
  requireInteger,
  requireOneOf,
  requirePositive,
  requireSome,
} from './guard.js';
export { itemAt } from './item-at.js';
export {
  asErrorOf,
  type JsonFields,
  type JsonReading,
  readJson,
  requireFields,
} from './json-fields.js';
export { kindOfFile } from './kind-of-file.js';
export { nearestOf } from './nearest.js';
export { type OptionNames, requireOptions } from './options.js';
export { type Random, randomFrom } from './random.js';
export { requireShape, requireShapes, type Shape, type ShapeWords } from './shape.js';
export { logOfTwo, powerOfTwo } from './two-power.js';

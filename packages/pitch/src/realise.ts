import { buildChord, type Chord, parseChord } from './chord.js';
import { type ChordQuality, readChordQuality } from './chord-quality.js';
import { type Key, type KeyName, toKey } from './key.js';
import { MAJOR_SCALE } from './major-scale.js';
import { type NoteName, type NoteNameParts, readNoteName, spellOnStep } from './note-name.js';
import {
  makeNumeral,
  type Numeral,
  type NumeralAlteration,
  type NumeralStep,
  parseNumeral,
} from './numeral.js';
import { toPitchClass } from './pitch-class.js';
import { plainName } from './plain-name.js';

/**
 * The chord a numeral names in a key, spelled by the steps of the key: IV7 in A♭ is D♭7, iv in
 * C♯ minor is F♯m. Takes the numeral parsed or as text. A root that would need three sharps or
 * flats takes its plain name.
 *
 * @throws ReedplateError `NUMERAL_UNKNOWN`, `KEY_UNKNOWN`
 * @example
 * ```ts
 * import { chordOfNumeral } from '@reedplate/pitch';
 *
 * chordOfNumeral('IV7', 'Ab').symbol; // => 'Db7'
 * chordOfNumeral('iv', 'C#m').symbol; // => 'F#m'
 * chordOfNumeral('V7/V', 'G').symbol; // => 'A7'
 * chordOfNumeral('VIII', 'G'); // throws NUMERAL_UNKNOWN
 * ```
 */
export function chordOfNumeral(numeral: Numeral | string, key: Key | KeyName): Chord {
  const parsed = parseNumeral(typeof numeral === 'string' ? numeral : (numeral?.text ?? numeral));
  return buildChord(rootOf(parsed, toKey(key)), readChordQuality(parsed.quality) as ChordQuality);
}

function rootOf({ step, semitones, of }: Numeral, key: Key): NoteName {
  const tonic = readNoteName(key.tonic) as NoteNameParts;
  const steps = step - 1 + (of === undefined ? 0 : of.step - 1);
  const pitchClass = toPitchClass(key.pitchClass + semitones);
  return spellOnStep(pitchClass, tonic.step + steps) ?? plainName(pitchClass);
}

/**
 * The numeral of a chord in a key, by the chord's spelling: A♭7 in C is ♭VI7, G♯7 is ♯V7. The
 * inverse of {@link chordOfNumeral} for every numeral without a slash whose root needs no third
 * sharp or flat. A bass note is left out. Takes the chord parsed or as text.
 *
 * @throws ReedplateError `CHORD_UNKNOWN`, `KEY_UNKNOWN`
 * @example
 * ```ts
 * import { numeralOfChord } from '@reedplate/pitch';
 *
 * numeralOfChord('Db7', 'Ab').text; // => 'IV7'
 * numeralOfChord('Am7', 'G').text; // => 'ii7'
 * numeralOfChord('H7', 'G'); // throws CHORD_UNKNOWN
 * ```
 */
export function numeralOfChord(chord: Chord | string, key: Key | KeyName): Numeral {
  const parsed = parseChord(typeof chord === 'string' ? chord : (chord?.symbol ?? chord));
  const tonic = readNoteName(toKey(key).tonic) as NoteNameParts;
  const root = readNoteName(parsed.root) as NoteNameParts;
  const quality = readChordQuality(parsed.quality) as ChordQuality;
  const semitones = toPitchClass(root.pitchClass - tonic.pitchClass);
  const onStaff = (root.step - tonic.step + 7) % 7;
  const { step, alteration } = placeOnStep(semitones, onStaff) ?? plainPlace(semitones);
  return makeNumeral({ step, alteration, quality });
}

interface NumeralPlace {
  readonly step: NumeralStep;
  readonly alteration: NumeralAlteration;
}

function placeOnStep(semitones: number, onStaff: number): NumeralPlace | undefined {
  const alteration = toPitchClass(semitones - (MAJOR_SCALE[onStaff] ?? 0) + 6) - 6;
  if (Math.abs(alteration) > 1) return undefined;
  return { step: (onStaff + 1) as NumeralStep, alteration: alteration as NumeralAlteration };
}

/** Places of roots spelled too far from the key, as a fifth-wise plain reading has them. */
const PLAIN_STEP = [0, 1, 1, 2, 2, 3, 3, 4, 5, 5, 6, 6] as const;

function plainPlace(semitones: number): NumeralPlace {
  return placeOnStep(semitones, PLAIN_STEP[semitones] ?? 0) as NumeralPlace;
}

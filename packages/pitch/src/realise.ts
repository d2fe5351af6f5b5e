import { fromSemitones } from '@tonaljs/interval';
import { distance, transpose } from '@tonaljs/pitch-distance';
import { interval as tonalInterval } from '@tonaljs/pitch-interval';
import { buildChord, type Chord, type ChordLike, type ChordTone, parseChord } from './chord.js';
import { type ChordQuality, readChordQuality } from './chord-quality.js';
import { type Key, type KeyLike, toKey } from './key.js';
import { type NoteName, readNoteName } from './note-name.js';
import {
  intervalTo,
  makeNumeral,
  type Numeral,
  type NumeralAlteration,
  type NumeralPlace,
  type NumeralStep,
  parseNumeral,
} from './numeral.js';
import { type PitchClass, toPitchClass } from './pitch-class.js';
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
export function chordOfNumeral(numeral: Numeral | string, key: KeyLike): Chord {
  const parsed = parseNumeral(typeof numeral === 'string' ? numeral : (numeral?.text ?? numeral));
  return buildChord(rootOf(parsed, toKey(key)), readChordQuality(parsed.quality) as ChordQuality);
}

function rootOf(numeral: Numeral, { tonic, pitchClass }: Key): NoteName {
  const { semitones, of } = numeral;
  const home = of === undefined ? tonic : transpose(tonic, intervalTo(of));
  const root = readNoteName(transpose(home, intervalTo(numeral)));
  return root?.name ?? plainName(toPitchClass(pitchClass + semitones));
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
export function numeralOfChord(chord: ChordLike, key: KeyLike): Numeral {
  const { root, quality, tones } = parseChord(chord);
  const { tonic, pitchClass } = toKey(key);
  const written = placeAt(distance(tonic, root));
  const isFar = Math.abs(written.alteration) > 1;
  const place = isFar ? placeAt(soundedInterval(tones, pitchClass)) : written;
  return makeNumeral({ ...place, quality: readChordQuality(quality) as ChordQuality });
}

/** For a root spelled too far from the key: the usual interval that sounds the same. */
function soundedInterval([root]: readonly ChordTone[], tonic: PitchClass): string {
  return fromSemitones(toPitchClass((root?.pitchClass ?? 0) - tonic));
}

function placeAt(interval: string): NumeralPlace {
  const { step, alt } = tonalInterval(interval);
  return { step: (step + 1) as NumeralStep, alteration: alt as NumeralAlteration };
}

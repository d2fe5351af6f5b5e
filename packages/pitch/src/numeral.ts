import { interval as tonalInterval } from '@tonaljs/pitch-interval';
import { altToAcc } from '@tonaljs/pitch-note';
import { names as romanNames, get as tonalNumeral } from '@tonaljs/roman-numeral';
import { asciiSigns } from './accidental.js';
import { type ChordQuality, hasMinorThird, readChordQuality } from './chord-quality.js';
import { ReedplateError } from './error.js';
import { nearestOf } from './nearest.js';
import { type PitchClass, toPitchClass } from './pitch-class.js';

/** Degree of the major scale that a numeral's letters name. */
export type NumeralStep = 1 | 2 | 3 | 4 | 5 | 6 | 7;

/** Sharp (1), none (0) or flat (−1) before a numeral. */
export type NumeralAlteration = -1 | 0 | 1;

/**
 * A chord by its place in a key. Steps are those of the major scale above the tonic, in minor
 * keys too, as blues and jazz players count them: ♭VI in C and in C minor are both A♭.
 */
export interface Numeral {
  /**
   * Canonical text: capitals where the third is major or absent, small letters where it is minor;
   * `I7` is a dominant seventh, `i7` a minor seventh, `#ivdim7` a diminished seventh.
   */
  readonly text: string;
  readonly step: NumeralStep;
  readonly alteration: NumeralAlteration;
  /** Canonical chord suffix: `7`, `m7`, `dim7`, as in {@link Chord}. */
  readonly quality: string;
  /** Semitones of the chord's root above the tonic of the key. */
  readonly semitones: PitchClass;
  /** For a secondary chord such as V7/ii: what stands under the slash. */
  readonly of?: NumeralTarget;
}

/** The degree a secondary chord leads to. */
export interface NumeralTarget {
  readonly step: NumeralStep;
  readonly alteration: NumeralAlteration;
  /** Canonical text after the slash; small letters for a minor chord. */
  readonly text: string;
}

const NUMERAL = /^([b#♭♯]?)(VII|VI|IV|V|III|II|I|vii|vi|iv|v|iii|ii|i)(.*)$/u;
const TARGET = /^(.*)\/([b#♭♯]?)(VII|VI|IV|V|III|II|I|vii|vi|iv|v|iii|ii|i)$/u;
const LONGEST_NUMERAL = 40;

/**
 * Reads a Roman numeral as blues players write it. Case is honoured: `I7` is a dominant seventh,
 * `i7` a minor seventh. Secondary chords (`V7/V`) and altered degrees (`bVI7`, `#IVdim7`) are read;
 * a capital before a minor suffix (`IIm7`) is taken as `ii7`.
 *
 * @throws ReedplateError `NUMERAL_UNKNOWN`
 * @example
 * ```ts
 * import { parseNumeral } from '@reedplate/pitch';
 *
 * parseNumeral('i7').quality; // => 'm7'
 * parseNumeral('#IVdim7').text; // => '#ivdim7'
 * parseNumeral('V7/ii').semitones; // => 9
 * parseNumeral('VIII'); // throws NUMERAL_UNKNOWN
 * ```
 */
export function parseNumeral(text: string): Numeral {
  const numeral = typeof text === 'string' ? readNumeral(text.trim()) : undefined;
  if (numeral !== undefined) return numeral;
  throw unknownNumeral(text);
}

function readNumeral(text: string): Numeral | undefined {
  if (text.length > LONGEST_NUMERAL) return undefined;
  const [, head, targetSign = '', targetLetters] = TARGET.exec(text) ?? [];
  const [, sign = '', letters, suffix = ''] = NUMERAL.exec(head ?? text) ?? [];
  if (letters === undefined) return undefined;
  const quality = readQuality(letters, suffix);
  if (quality === undefined) return undefined;
  const of = targetLetters === undefined ? undefined : makeTarget(targetSign, targetLetters);
  return makeNumeral({ ...placeOf(sign, letters), quality, of });
}

/** Parts that {@link makeNumeral} composes. */
export interface NumeralParts {
  readonly step: NumeralStep;
  readonly alteration: NumeralAlteration;
  readonly quality: ChordQuality;
  readonly of?: NumeralTarget | undefined;
}

/** Composes a numeral and its canonical text from parts that are known to be right. */
export function makeNumeral({ step, alteration, quality, of }: NumeralParts): Numeral {
  const base = semitonesOf({ step, alteration }) + (of === undefined ? 0 : semitonesOf(of));
  const small = hasMinorThird(quality);
  const letters = romanNames(!small)[step - 1] as string;
  const head = `${altToAcc(alteration)}${letters}`;
  const suffix = small ? shortenedSuffix(quality.suffix) : quality.suffix;
  return Object.freeze({
    text: `${head}${suffix}${of === undefined ? '' : `/${of.text}`}`,
    step,
    alteration,
    quality: quality.suffix,
    semitones: toPitchClass(base),
    ...(of === undefined ? {} : { of }),
  });
}

/**
 * After small letters the `m` of a minor suffix is not repeated where it reads back the same;
 * `m7b5` keeps it, as players write the half-diminished chord.
 */
function shortenedSuffix(suffix: string): string {
  if (!suffix.startsWith('m') || /[b#]/u.test(suffix)) return suffix;
  const short = suffix.startsWith('mMaj') ? `maj${suffix.slice(4)}` : suffix.slice(1);
  return readMinorQuality(short)?.suffix === suffix ? short : suffix;
}

function readQuality(letters: string, suffix: string): ChordQuality | undefined {
  return letters === letters.toUpperCase() ? readChordQuality(suffix) : readMinorQuality(suffix);
}

/** Small letters promise a minor third: `i7` is minor whatever `7` means after a capital. */
function readMinorQuality(suffix: string): ChordQuality | undefined {
  const written = readChordQuality(suffix);
  if (written !== undefined && hasMinorThird(written)) return written;
  const quality = readChordQuality(`m${suffix}`);
  return quality !== undefined && hasMinorThird(quality) ? quality : undefined;
}

function makeTarget(sign: string, letters: string): NumeralTarget {
  const place = placeOf(sign, letters);
  return Object.freeze({ ...place, text: `${altToAcc(place.alteration)}${letters}` });
}

/** Where a numeral stands in a key. */
export interface NumeralPlace {
  readonly step: NumeralStep;
  readonly alteration: NumeralAlteration;
}

/** As tonal places a sign and letters; what follows them is read by our own rules. */
function placeOf(sign: string, letters: string): NumeralPlace {
  const { step = 0, alt = 0 } = tonalNumeral(`${asciiSigns(sign)}${letters}`);
  return { step: (step + 1) as NumeralStep, alteration: alt as NumeralAlteration };
}

/** The interval from the tonic up to a place, as tonal writes it: `3m`, `4A`. */
export function intervalTo({ step, alteration }: NumeralPlace): string {
  return tonalInterval({ step: step - 1, alt: alteration, oct: 0, dir: 1 }).name;
}

function semitonesOf(place: NumeralPlace): number {
  return tonalInterval(intervalTo(place)).semitones;
}

function unknownNumeral(text: unknown): ReedplateError {
  return new ReedplateError({
    code: 'NUMERAL_UNKNOWN',
    value: text,
    expected: 'a numeral I to VII (small for minor) with a suffix, such as I7, iv, bVI7 or V7/ii',
    nearest: typeof text === 'string' ? nearestNumeral(text.trim()) : undefined,
  });
}

/** Suffixes worth suggesting after capital and after small letters. */
const USUAL_SUFFIXES = {
  capital: ['', '7', '6', '9', 'maj7', 'sus4', '7sus4', 'aug', 'dim'],
  small: ['', '7', '6', '9', 'm7b5', 'dim7'],
} as const;

function nearestNumeral(text: string): string | undefined {
  const sign = asciiSigns(/^[b#♭♯]/u.exec(text)?.[0] ?? '');
  const choices = romanNames().flatMap((letters) => [
    ...USUAL_SUFFIXES.capital.map((suffix) => `${sign}${letters}${suffix}`),
    ...USUAL_SUFFIXES.small.map((suffix) => `${sign}${letters.toLowerCase()}${suffix}`),
  ]);
  return nearestOf(text, choices);
}

import { asciiSigns } from './accidental.js';
import { ReedplateError } from './error.js';
import { requireInteger } from './guard.js';
import { MAJOR_SCALE } from './major-scale.js';
import { nearestOf } from './nearest.js';
import { type PitchClass, toPitchClass } from './pitch-class.js';

/** The seven letters of the staff. */
export type Letter = 'C' | 'D' | 'E' | 'F' | 'G' | 'A' | 'B';

/** Sharps and flats after a letter, up to two. */
export type Accidental = '' | '#' | 'b' | '##' | 'bb';

/** A spelled note without octave: `Bb`, `F#`. */
export type NoteName = `${Letter}${Accidental}`;

/** A spelled note with octave in scientific pitch notation, C4 = middle C: `Bb3`. */
export type NoteNameWithOctave = `${NoteName}${number}`;

/** Letters in staff order, C first: the place in this list is the diatonic step above C. */
export const LETTERS: readonly Letter[] = Object.freeze(['C', 'D', 'E', 'F', 'G', 'A', 'B']);

const ACCIDENTALS: readonly Accidental[] = ['bb', 'b', '', '#', '##'];
const FLAT_MOST = -2;
const SHARP_MOST = 2;

/** Every spelled note name, C to B, from double flat to double sharp. */
export const NOTE_NAMES: readonly NoteName[] = Object.freeze(
  LETTERS.flatMap((letter) => ACCIDENTALS.map((sign): NoteName => `${letter}${sign}`)),
);

/** A note name taken apart. */
export interface NoteNameParts {
  readonly name: NoteName;
  /** Diatonic step above C: 0 for C to 6 for B. */
  readonly step: number;
  /** Semitones away from the letter's natural note: −2 to 2. */
  readonly alteration: number;
  readonly pitchClass: PitchClass;
}

/**
 * Reads a note name without octave. Capitals do not matter; the printed signs `♯`, `♭`, `𝄪` and
 * `𝄫` are read, and `x` as a double sharp.
 *
 * @throws ReedplateError `NOTE_UNKNOWN`
 * @example
 * ```ts
 * import { parseNoteName } from '@reedplate/pitch';
 *
 * parseNoteName('b♭'); // => { name: 'Bb', step: 6, alteration: -1, pitchClass: 10 }
 * parseNoteName('H'); // throws NOTE_UNKNOWN
 * ```
 */
export function parseNoteName(text: string): NoteNameParts {
  const parts = readNoteName(text);
  if (parts !== undefined) return parts;
  throw new ReedplateError({
    code: 'NOTE_UNKNOWN',
    value: text,
    expected: 'a letter A to G with up to two sharps or flats, such as Bb',
    nearest: nearestNoteName(text),
  });
}

const PARTS_BY_NAME: ReadonlyMap<string, NoteNameParts> = new Map(
  LETTERS.flatMap((letter, step) =>
    ACCIDENTALS.map((sign, index): [string, NoteNameParts] => {
      const alteration = index + FLAT_MOST;
      const pitchClass = toPitchClass((MAJOR_SCALE[step] ?? 0) + alteration);
      const name: NoteName = `${letter}${sign}`;
      return [name, Object.freeze({ name, step, alteration, pitchClass })];
    }),
  ),
);

/** A letter and two signs; one printed double sharp is two code units. */
const LONGEST_NAME = 3;

/** The note name most like a text; H, which is B to half of Europe, is read as B. */
export function nearestNoteName(text: unknown): NoteName | undefined {
  return typeof text === 'string' ? nearestOf(withoutH(text), NOTE_NAMES) : undefined;
}

/** The text with a leading H read as the B it means in central and northern Europe. */
export function withoutH(text: string): string {
  return text.replace(/^h/iu, 'B');
}

/** As {@link parseNoteName}, but `undefined` where the text is no note name. */
export function readNoteName(text: string): NoteNameParts | undefined {
  if (typeof text !== 'string' || text.length > LONGEST_NAME) return undefined;
  const known = PARTS_BY_NAME.get(text);
  if (known !== undefined) return known;
  return PARTS_BY_NAME.get(text.charAt(0).toUpperCase() + asciiSigns(text.slice(1)));
}

/**
 * The spelling of a pitch class on a given staff step, or `undefined` where it would take more
 * than two sharps or flats.
 *
 * @param pitchClass what is to sound; whole numbers outside 0 to 11 are taken modulo 12
 * @param step diatonic step above C, a whole number; taken modulo 7
 * @throws ReedplateError `NUMBER_RANGE` for what is no whole number
 * @example
 * ```ts
 * import { spellOnStep } from '@reedplate/pitch';
 *
 * spellOnStep(10, 6); // => 'Bb'
 * spellOnStep(10, 5); // => 'A#'
 * spellOnStep(10, 1); // => undefined
 * ```
 */
export function spellOnStep(pitchClass: PitchClass, step: number): NoteName | undefined {
  const onStaff = ((requireInteger(step, { what: 'a staff step' }) % 7) + 7) % 7;
  const natural = MAJOR_SCALE[onStaff] ?? 0;
  const alteration = toPitchClass(pitchClass - natural + 6) - 6;
  if (alteration < FLAT_MOST || alteration > SHARP_MOST) return undefined;
  return `${LETTERS[onStaff] as Letter}${ACCIDENTALS[alteration - FLAT_MOST] as Accidental}`;
}

import { altToAcc, note as tonalNote } from '@tonaljs/pitch-note';
import { asciiSigns } from './accidental.js';
import { ReedplateError } from './error.js';
import { requireInteger } from './guard.js';
import { lazily } from './lazily.js';
import { nearestOf } from './nearest.js';
import { type PitchClass, toPitchClass } from './pitch-class.js';
import type { TonalNote } from './tonal-types.js';

/** The seven letters of the staff. */
export type Letter = 'C' | 'D' | 'E' | 'F' | 'G' | 'A' | 'B';

/** Sharps and flats after a letter, up to two. */
export type Accidental = '' | '#' | 'b' | '##' | 'bb';

/** A spelled note without octave: `Bb`, `F#`. */
export type NoteName = `${Letter}${Accidental}`;

/** A spelled note with octave in scientific pitch notation, C4 = middle C: `Bb3`. */
export type NoteNameWithOctave = `${NoteName}${number}`;

/** A note as it is taken everywhere: by name, or as `Note.get` of tonal gives it. */
export type NoteLike = string | TonalNote;

/** Letters in staff order, C first: the place in this list is the diatonic step above C. */
export const LETTERS: readonly Letter[] = /* @__PURE__ */ Object.freeze([
  'C',
  'D',
  'E',
  'F',
  'G',
  'A',
  'B',
]);

const ACCIDENTALS: readonly Accidental[] = ['bb', 'b', '', '#', '##'];
const MOST_SIGNS = 2;

/** Every spelled note name, C to B, from double flat to double sharp. */
export const NOTE_NAMES: readonly NoteName[] = /* @__PURE__ */ (() =>
  Object.freeze(
    LETTERS.flatMap((letter) => ACCIDENTALS.map((sign): NoteName => `${letter}${sign}`)),
  ))();

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
 * `𝄫` are read, and `x` as a double sharp. Of what `Note.get` of tonal gives the octave is left out.
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
export function parseNoteName(note: NoteLike): NoteNameParts {
  const text = fieldOf(note, 'pc');
  const parts = readNoteName(text);
  if (parts !== undefined) return parts;
  throw new ReedplateError({
    code: 'NOTE_UNKNOWN',
    value: text,
    expected: 'a letter A to G with up to two sharps or flats, such as Bb',
    nearest: nearestNoteName(text),
  });
}

/**
 * The names taken apart by tonal, once: text of a user is looked up here and never reaches tonal,
 * which keeps every text that it was ever given.
 */
const partsByName = /* @__PURE__ */ lazily(
  (): ReadonlyMap<string, NoteNameParts> =>
    new Map(NOTE_NAMES.map((name) => [name, partsOf(name)])),
);

function partsOf(name: NoteName): NoteNameParts {
  const { step, alt, chroma } = tonalNote(name);
  return Object.freeze({ name, step, alteration: alt, pitchClass: toPitchClass(chroma) });
}

/** The name in an object of tonal; what is none stays as it is, for the error to show. */
export function fieldOf(note: NoteLike, field: keyof TonalNote): string {
  if (typeof note !== 'object' || note === null) return note;
  const name: unknown = note[field];
  return (typeof name === 'string' && name !== '' ? name : note) as string;
}

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
  const known = partsByName().get(text);
  if (known !== undefined) return known;
  return partsByName().get(text.charAt(0).toUpperCase() + asciiSigns(text.slice(1)));
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
  const letter = LETTERS[onStaff] as Letter;
  const alteration = toPitchClass(pitchClass - tonalNote(letter).chroma + 6) - 6;
  if (Math.abs(alteration) > MOST_SIGNS) return undefined;
  return `${letter}${altToAcc(alteration) as Accidental}`;
}

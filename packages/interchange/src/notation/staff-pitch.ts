import {
  type KeyName,
  LETTERS,
  type Letter,
  noteName,
  noteNameWithOctave,
  parseNoteName,
} from '@reedplate/pitch';

/** Semitones of each letter's natural note above C. */
export const LETTER_SEMITONES: ReadonlyMap<string, number> = new Map(
  LETTERS.map((letter) => [letter, parseNoteName(letter).pitchClass]),
);

/** A pitch as a staff writes it. */
export interface StaffPitch {
  readonly letter: Letter;
  /** Semitones away from the letter's natural note, −1 to 1. */
  readonly alteration: number;
  /** Octave of the letter in scientific pitch notation. */
  readonly octave: number;
}

/** Spells a MIDI number in a key, taken apart. */
export function staffPitch(pitch: number, key: KeyName): StaffPitch {
  const name = noteName(pitch, { key });
  const { step, alteration } = parseNoteName(name);
  const octave = Number(noteNameWithOctave(pitch, { key }).slice(name.length));
  return { letter: LETTERS[step] as Letter, alteration, octave };
}

import {
  type Chord,
  type KeyName,
  LETTERS,
  type Letter,
  type NoteName,
  parseNoteName,
  spell,
  toPitchClass,
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

/**
 * Spells a MIDI number, taken apart: a tone of the chord as the chord names it, so that the third of E7
 * is G# in every key; any other note as the key does.
 */
export function staffPitch(pitch: number, key: KeyName, chord?: Chord): StaffPitch {
  const { step, alteration, pitchClass } = parseNoteName(nameOn(pitch, key, chord));
  // The C♭ of an octave sounds below its C, the B♯ above its B.
  const octave = (pitch - alteration - toPitchClass(pitchClass - alteration)) / 12 - 1;
  return { letter: LETTERS[step] as Letter, alteration, octave };
}

/** A tone that its chord names by a double sign is easier to read as the key has it. */
const LONGEST_NAME = 2;

function nameOn(pitch: number, key: KeyName, chord: Chord | undefined): NoteName {
  const pitchClass = toPitchClass(pitch);
  const tone = chord?.tones.find((each) => each.pitchClass === pitchClass);
  return tone === undefined || tone.name.length > LONGEST_NAME ? spell(pitchClass, key) : tone.name;
}

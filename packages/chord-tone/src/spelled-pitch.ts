import { type NoteName, type NoteNameWithOctave, parseNoteName } from '@reedplate/pitch';

/** A MIDI number under a spelled name, with the octave that belongs to the name's letter. */
export function spelledPitch(pitch: number, name: NoteName): NoteNameWithOctave {
  const { alteration } = parseNoteName(name);
  return `${name}${Math.floor((pitch - alteration) / 12) - 1}`;
}

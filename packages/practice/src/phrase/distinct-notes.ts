import type { PhraseNote } from './phrase.js';

/** Of notes struck together that have come to one pitch, one. */
export function distinctNotes(notes: readonly PhraseNote[]): readonly PhraseNote[] {
  const seen = new Set<string>();
  return notes.filter(({ at, degree, octave }) => {
    const name = `${at} ${degree} ${octave}`;
    const isNew = !seen.has(name);
    seen.add(name);
    return isNew;
  });
}

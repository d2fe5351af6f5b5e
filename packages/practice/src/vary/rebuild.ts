import { makePhrase, type PhraseDetails } from '../phrase/make-phrase.js';
import type { Phrase, PhraseNote } from '../phrase/phrase.js';

/** The phrase with other notes, and what else the variation changes; its id says which variation it was. */
export function rebuild(
  { notes: _, ...details }: Phrase,
  word: string,
  notes: readonly PhraseNote[],
  changes: PhraseDetails = {},
): Phrase {
  return makePhrase(notes, {
    ...details,
    id: `${details.id}-${word}`,
    name: `${details.name}, ${word}`,
    ...changes,
  });
}

import { nearestOf, ReedplateError, requireShape } from '@reedplate/pitch';
import { allPhrases } from '../catalogue/phrases.js';
import type { Phrase } from './phrase.js';

/** A phrase, or the id of one of the catalogue. */
export type PhraseLike = Phrase | (string & Record<never, never>);

/**
 * A phrase of the catalogue by its id.
 *
 * @throws ReedplateError `PHRASE_UNKNOWN`, with the nearest id
 * @example
 * ```ts
 * import { phraseById } from '@reedplate/practice';
 *
 * phraseById('low-seat').kind; // => 'riff'
 * phraseById('low-seet'); // throws PHRASE_UNKNOWN
 * ```
 */
export function phraseById(id: string): Phrase {
  const phrases = allPhrases();
  const found = phrases.find((phrase) => phrase.id === id);
  if (found !== undefined) return found;
  throw new ReedplateError({
    code: 'PHRASE_UNKNOWN',
    value: id,
    expected: `the id of one of the ${phrases.length} phrases, such as ${phrases[0]?.id}`,
    nearest:
      typeof id === 'string'
        ? nearestOf(
            id,
            phrases.map((phrase) => phrase.id),
          )
        : undefined,
  });
}

/** The phrase itself, given as a phrase or by its id: how every function here takes a phrase. */
export function toPhrase(phrase: PhraseLike): Phrase {
  if (typeof phrase === 'string') return phraseById(phrase);
  return requireShape(
    phrase,
    { id: 'text', name: 'text', notes: 'list', harmony: 'text', metre: 'text', pickup: 'number' },
    { what: 'a phrase, as makePhrase gives it, or the id of one', code: 'PHRASE_INVALID' },
  );
}

import { nearestOf, ReedplateError, requireShape } from '@reedplate/pitch';
import { allPhrases } from '../catalogue/phrases.js';
import type { Phrase } from './phrase.js';

/** A phrase, or its id: one of the catalogue, or one of those given by `known`. */
export type PhraseLike = Phrase | (string & Record<never, never>);

/** Phrases of one's own that are known by their id, before those of the catalogue. */
export interface KnownPhrases {
  readonly phrases?: readonly Phrase[];
}

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
  return findById(id, allPhrases());
}

/**
 * The phrase itself, given as a phrase or by its id: how every function here takes a phrase.
 *
 * @internal
 * @throws ReedplateError `PHRASE_UNKNOWN`, or `PHRASE_INVALID` for what is no phrase
 * @example
 * ```ts
 * import { parsePhrase, toPhrase } from '@reedplate/practice';
 *
 * const mine = parsePhrase('-2 -3 -4', { id: 'mine', kind: 'fill' });
 * toPhrase('mine', { phrases: [mine] }).kind; // => 'fill'
 * toPhrase('mine'); // throws PHRASE_UNKNOWN
 * ```
 */
export function toPhrase(phrase: PhraseLike, known: KnownPhrases = {}): Phrase {
  if (typeof phrase !== 'string') return requirePhrase(phrase);
  return findById(phrase, [...ownPhrases(known), ...allPhrases()]);
}

/** One's own phrases, each looked at. */
export function ownPhrases({ phrases = [] }: KnownPhrases): readonly Phrase[] {
  requireShape({ phrases }, { phrases: 'list' }, { ...WORDS, what: "a list of one's own phrases" });
  return phrases.map((phrase) => requirePhrase(phrase));
}

function findById(id: string, phrases: readonly Phrase[]): Phrase {
  const found = phrases.find((phrase) => phrase.id === id);
  if (found !== undefined) return found;
  const ids = phrases.map((phrase) => phrase.id);
  throw new ReedplateError({
    code: 'PHRASE_UNKNOWN',
    value: id,
    expected: `the id of one of the ${ids.length} phrases, such as ${ids[0]}`,
    nearest: typeof id === 'string' ? nearestOf(id, ids) : undefined,
  });
}

const WORDS = {
  what: 'a phrase, as makePhrase gives it, or the id of one',
  code: 'PHRASE_INVALID',
} as const;

function requirePhrase(phrase: Phrase): Phrase {
  return requireShape(
    phrase,
    { id: 'text', name: 'text', notes: 'list', harmony: 'text', metre: 'text', pickup: 'number' },
    WORDS,
  );
}

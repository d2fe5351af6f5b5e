import { type OptionNames, requireOneOf, requireOptions } from '@reedplate/pitch';
import { knownParts } from '../known.js';
import { invalidPhrase } from '../phrase/invalid-phrase.js';
import type { Phrase } from '../phrase/phrase.js';
import { type KnownPhrases, type PhraseLike, toPhrase } from '../phrase/to-phrase.js';
import { answered } from './answer.js';
import { inMinor } from './minor.js';
import { ornamented } from './ornament.js';
import { sequenced } from './sequence.js';
import { displaced, longer, shorter, thinned } from './times.js';
import type { PhraseVariation } from './variation.js';

const WAYS = [
  'sequenced',
  'displaced',
  'longer',
  'shorter',
  'thinned',
  'ornamented',
  'answered',
  'minor',
] as const;

/** What {@link varyPhrase} knows. */
export interface VaryOptions {
  /** Phrases of one's own, by their ids. */
  readonly known?: KnownPhrases;
}

const OPTIONS: OptionNames<VaryOptions> = { known: true };

/**
 * A phrase varied, one way after the other. What each way keeps is said at {@link PhraseVariation}.
 *
 * @throws ReedplateError `PHRASE_UNKNOWN`, `PHRASE_INVALID` for chords that are none or too few and for beats
 *   that leave nothing, `OPTION_UNKNOWN`, `NUMBER_RANGE`
 * @example
 * ```ts
 * import { formatPhrase, varyPhrase } from '@reedplate/practice';
 *
 * formatPhrase('squeeze'); // => "-4:1/2 -4':1/2 +4:1/2 -3:1/2 -2:2"
 * formatPhrase(varyPhrase('squeeze', [{ way: 'thinned' }])); // => '-4:1/2 r:1/2 +4:1/2 r:1/2 -2:2'
 * const riff = varyPhrase('stair', [{ way: 'sequenced', harmony: 'I7 | IV7 | V7' }]);
 * riff.notes.length; // => 15
 * varyPhrase('stair', [{ way: 'longr' as 'longer' }]); // throws OPTION_UNKNOWN
 * ```
 */
export function varyPhrase(
  given: PhraseLike,
  variations: readonly PhraseVariation[],
  options: VaryOptions = {},
): Phrase {
  const { known } = requireOptions(options, OPTIONS, 'varyPhrase');
  if (!Array.isArray(variations)) throw invalidPhrase(variations, 'a list of variations');
  return (variations as readonly PhraseVariation[]).reduce(
    varyOnce,
    toPhrase(given, knownParts(known).phrases),
  );
}

function varyOnce(phrase: Phrase, variation: PhraseVariation): Phrase {
  requireOneOf(variation?.way, WAYS, { what: 'a way to vary' });
  switch (variation.way) {
    case 'sequenced':
      return sequenced(phrase, variation.harmony);
    case 'displaced':
      return displaced(phrase, variation.beats);
    case 'ornamented':
      return ornamented(phrase, variation.with);
    case 'longer':
      return longer(phrase);
    case 'shorter':
      return shorter(phrase);
    case 'thinned':
      return thinned(phrase);
    case 'answered':
      return answered(phrase);
    default:
      return inMinor(phrase);
  }
}

import { type Mode, ReedplateError, requireOneOf } from '@reedplate/pitch';
import { modeOfPhrase } from '../catalogue/find-phrases.js';
import { phraseChart } from '../phrase/harmony.js';
import { lineOfPhrase } from '../phrase/line-of-phrase.js';
import type { Phrase } from '../phrase/phrase.js';
import { ownPhrases } from '../phrase/to-phrase.js';
import { learnMelody, type MelodyExample } from './learn-melody.js';
import type { MelodyModel } from './melody-model.js';

/** Pitch of the tonic that all melodies are laid on. */
const HOME = 60;
const TONICS: Readonly<Record<Mode, 'C' | 'Cm'>> = { major: 'C', minor: 'Cm' };

/**
 * What the phrases of a mode like to do, as a model for `composeLine`: from a few dozen licks of one's own come
 * choruses in their manner. Rhythms of chords are no melody and are left out.
 *
 * @throws ReedplateError `LIST_EMPTY` where no phrase is a melody in that mode; `PHRASE_INVALID`, `OPTION_UNKNOWN`
 * @example
 * ```ts
 * import { learnPhrases, parsePhrase } from '@reedplate/practice';
 *
 * const mine = parsePhrase('-2 -3 -4 -2');
 * learnPhrases([mine], 'major').transitions[0]?.[4]; // => 1.1
 * learnPhrases([mine], 'minor'); // throws LIST_EMPTY
 * ```
 */
export function learnPhrases(phrases: readonly Phrase[], mode: Mode): MelodyModel {
  requireOneOf(mode, ['major', 'minor'], { what: 'a mode' });
  const own = ownPhrases({ phrases: phrases ?? [] });
  const melodies = melodiesOf(own, mode);
  if (melodies.length === 0) {
    throw new ReedplateError({
      code: 'LIST_EMPTY',
      value: `${own.length} phrases`,
      expected: `a phrase in ${mode} that is a melody`,
    });
  }
  return learnMelody(melodies);
}

/** The melodies among phrases in one mode, all on C. */
export function melodiesOf(phrases: readonly Phrase[], mode: Mode): readonly MelodyExample[] {
  const key = TONICS[mode];
  return phrases
    .filter((phrase) => phrase.kind !== 'chord-rhythm' && modeOfPhrase(phrase) === mode)
    .map((phrase) => ({ line: lineOfPhrase(phrase, phraseChart(phrase, key), HOME), key }));
}

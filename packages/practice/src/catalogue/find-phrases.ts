import { FEELS, type Feel } from '@reedplate/form';
import { type PlayerLike, toPlayer } from '@reedplate/layout';
import {
  type Mode,
  type OptionNames,
  requireInteger,
  requireOneOf,
  requireOptions,
} from '@reedplate/pitch';
import { modeOfHarmony } from '../phrase/harmony.js';
import { PHRASE_KINDS, type Phrase, type PhraseGrade, type PhraseKind } from '../phrase/phrase.js';
import { allPhrases } from './phrases.js';
import { playableBy } from './playable-by.js';

/** Which phrases {@link findPhrases} gives; what is left out is free. */
export interface PhraseFilter {
  readonly kind?: PhraseKind;
  readonly position?: Phrase['position'];
  readonly mode?: Mode;
  readonly feel?: Feel;
  /** The highest grade, 1 to 5. */
  readonly grade?: PhraseGrade;
  /**
   * Who plays: the highest level, or a player, who has a phrase when they can play it as it is written, on a
   * standard harp in its position.
   */
  readonly level?: PlayerLike;
  /** Phrases to choose from; default the catalogue. */
  readonly from?: readonly Phrase[];
}

const FILTER: OptionNames<PhraseFilter> = {
  kind: true,
  position: true,
  mode: true,
  feel: true,
  grade: true,
  level: true,
  from: true,
};

/**
 * The phrases of the catalogue, or of a list of one's own, that answer a description: all of them where
 * nothing is asked. In the order of the catalogue.
 *
 * @throws ReedplateError `OPTION_UNKNOWN`, `NUMBER_RANGE`
 * @example
 * ```ts
 * import { findPhrases } from '@reedplate/practice';
 *
 * findPhrases({ kind: 'turnaround', position: 3, grade: 1 }).map(({ id }) => id)[0]; // => 'turn-minor-five'
 * findPhrases({ kind: 'lick', position: 9 }); // => []
 * findPhrases({ grade: 6 as 5 }); // throws NUMBER_RANGE
 * ```
 */
export function findPhrases(filter: PhraseFilter = {}): readonly Phrase[] {
  const { kind, position, mode, feel, grade, level, from } = checkFilter(filter);
  const has = level === undefined ? () => true : playableBy(toPlayer(level));
  return Object.freeze(
    (from ?? allPhrases()).filter(
      (phrase) =>
        (kind === undefined || phrase.kind === kind) &&
        (position === undefined || phrase.position === position) &&
        (mode === undefined || modeOfPhrase(phrase) === mode) &&
        (feel === undefined || phrase.feel === feel) &&
        (grade === undefined || phrase.grade <= grade) &&
        has(phrase),
    ),
  );
}

/** Whether a phrase is for a song in major or in minor, by its chords. */
export function modeOfPhrase(phrase: Phrase): Mode {
  return modeOfHarmony(phrase.harmony);
}

function checkFilter(filter: PhraseFilter): PhraseFilter {
  const { kind, position, mode, feel, grade } = requireOptions(filter, FILTER, 'findPhrases');
  if (kind !== undefined) requireOneOf(kind, PHRASE_KINDS, { what: 'a kind of phrase' });
  if (mode !== undefined) requireOneOf(mode, ['major', 'minor'], { what: 'a mode' });
  if (feel !== undefined) requireOneOf(feel, FEELS, { what: 'a feel' });
  if (position !== undefined) requireInteger(position, { min: 1, max: 12, what: 'a position' });
  if (grade !== undefined) requireInteger(grade, { min: 1, max: 5, what: 'a grade' });
  return filter;
}

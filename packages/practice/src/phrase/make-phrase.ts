import { FEELS } from '@reedplate/form';
import { TECHNIQUE_LEVELS } from '@reedplate/layout';
import { parseMetre } from '@reedplate/line';
import {
  asErrorOf,
  deepFreeze,
  type OptionNames,
  readJson,
  requireFields,
  requireInteger,
  requireOneOf,
  requireOptions,
} from '@reedplate/pitch';
import { checkNotes } from './check-notes.js';
import { phraseTicks, plainHarmony } from './harmony.js';
import { invalidPhrase } from './invalid-phrase.js';
import { PHRASE_KINDS, type Phrase, type PhraseGrade, type PhraseNote } from './phrase.js';

/** What {@link makePhrase} adds to the notes. */
export type PhraseDetails = Partial<Omit<Phrase, 'notes'>>;

/** The names of all details of a phrase. */
export const PHRASE_DETAILS: OptionNames<PhraseDetails> = {
  id: true,
  name: true,
  kind: true,
  from: true,
  harmony: true,
  metre: true,
  feel: true,
  pickup: true,
  position: true,
  level: true,
  grade: true,
  trains: true,
  source: true,
};

const CODE = 'PHRASE_INVALID';
const ID = /^[a-z0-9]+(?:-[a-z0-9]+)*$/u;

/**
 * Makes a phrase from notes by degrees: checked, sorted, frozen. Without more said it is a lick of
 * grade 1 over one bar of I7, a shuffle in 4/4, its degrees counted from the key, in second position,
 * for unbent notes.
 *
 * @throws ReedplateError `PHRASE_INVALID` with `where.path`, `METRE_UNKNOWN`, `OPTION_UNKNOWN` for a detail
 *   there is not
 * @example
 * ```ts
 * import { makePhrase } from '@reedplate/practice';
 *
 * const notes = [{ at: 0, length: 1920, degree: '1', octave: 0 }] as const;
 * makePhrase(notes, { id: 'long-root', harmony: 'I7' }).harmony; // => '| I7 |'
 * makePhrase(notes, { harmony: 'H7' }); // throws PHRASE_INVALID
 * makePhrase([]); // throws PHRASE_INVALID
 * ```
 */
export function makePhrase(notes: readonly PhraseNote[], details: PhraseDetails = {}): Phrase {
  const given = requireOptions(details, PHRASE_DETAILS, 'makePhrase');
  const { id = 'own', metre = '4/4', harmony = '| I7 |', pickup = 0 } = given;
  const { barTicks } = parseMetre(metre);
  const time = {
    harmony: plainHarmony(harmony),
    metre,
    pickup: whole(pickup, 0, barTicks - 1, 'pickup'),
  };
  return deepFreeze({
    ...checkWords({ ...given, id }),
    ...checkChoices(given),
    ...time,
    position: whole(given.position ?? 2, 1, 12, 'position') as Phrase['position'],
    grade: whole(given.grade ?? 1, 1, 5, 'grade') as PhraseGrade,
    notes: checkNotes(notes, phraseTicks(time)),
  });
}

/**
 * A phrase from parsed JSON, or from JSON text: the shape of {@link Phrase}, checked as by
 * {@link makePhrase}; only `notes` must be there. A field of another name is an error.
 *
 * @throws ReedplateError `JSON_MALFORMED`, `PHRASE_INVALID`, `METRE_UNKNOWN`
 * @example
 * ```ts
 * import { phraseById, readPhrase } from '@reedplate/practice';
 *
 * readPhrase(JSON.stringify(phraseById('low-seat'))).kind; // => 'riff'
 * readPhrase({ notes: [], nmae: 'x' }); // throws PHRASE_INVALID
 * ```
 */
export function readPhrase(json: unknown): Phrase {
  const fields = [...Object.keys(PHRASE_DETAILS), 'notes'] as (keyof Phrase)[];
  const { notes, ...details } = requireFields(readJson(json), fields, { code: CODE });
  // makePhrase checks each value; here only the names of the fields are known to be right.
  return asErrorOf(CODE, {}, () =>
    makePhrase(notes as readonly PhraseNote[], details as PhraseDetails),
  );
}

function checkWords({ id, name, trains = '', source = 'not stated' }: PhraseDetails) {
  if (typeof id !== 'string' || !ID.test(id)) {
    throw invalidPhrase(id, 'an id of lower-case words with hyphens', { path: 'id' });
  }
  return {
    id,
    name: text(name ?? id.replaceAll('-', ' '), 'name'),
    trains: text(trains, 'trains'),
    source: text(source, 'source'),
  };
}

function checkChoices({ kind = 'lick', from = 'key', feel = 'shuffle', level }: PhraseDetails) {
  const say = (what: string, path: string) => ({ what, code: CODE, where: { path } }) as const;
  return {
    kind: requireOneOf(kind, PHRASE_KINDS, say('a kind of phrase', 'kind')),
    from: requireOneOf(from, ['key', 'chord'], say('what degrees are counted from', 'from')),
    feel: requireOneOf(feel, FEELS, say('a feel', 'feel')),
    level: requireOneOf(level ?? 'natural', TECHNIQUE_LEVELS, say('a technique level', 'level')),
  };
}

function text(value: unknown, path: string): string {
  if (typeof value === 'string') return value;
  throw invalidPhrase(value, 'text', { path });
}

function whole(value: unknown, min: number, max: number, path: string): number {
  return requireInteger(value, { min, max, what: path, code: CODE, where: { path } });
}

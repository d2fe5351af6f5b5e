import {
  isReedplateError,
  type OptionNames,
  ReedplateError,
  readJson,
  requireOptions,
} from '@reedplate/pitch';
import { idOf, parseHeadedTab } from './headed-tab.js';
import { invalidPhrase } from './invalid-phrase.js';
import { lineOfPath } from './line-of-path.js';
import { readPhrase } from './make-phrase.js';
import type { Phrase } from './phrase.js';

/** How {@link readPhrases} reads. */
export interface ReadPhrasesOptions {
  /** Id of a phrase that has neither an id nor a name, such as the name of its file; default `own`. */
  readonly id?: string;
}

const OPTIONS: OptionNames<ReadPhrasesOptions> = { id: true };
const LONGEST_TEXT = 1_000_000;

/**
 * The phrases of a text, as an instructor keeps them in a file: JSON of one phrase or of a list of them, as
 * `readPhrase` reads it; or tab with rhythm, each phrase below a head that says what it is. A head has lines such as
 * `kind: riff`, with the fields of a {@link Phrase} and a pickup in felt beats; a line that begins with # is a comment.
 * An error says in which line it stands.
 *
 * @throws ReedplateError `PHRASE_INVALID` with `where.line`, also for two phrases of one id; `TAB_SYNTAX`,
 *   `JSON_MALFORMED`, `METRE_UNKNOWN`, `SOUNDING_IMPOSSIBLE`, `HOLE_RANGE`, `OPTION_UNKNOWN`
 * @example
 * ```ts
 * import { readPhrases } from '@reedplate/practice';
 *
 * const text = 'name: Back door\nkind: riff\nfrom: chord\n-2 -3:1/2 -4:1/2 r:2';
 * const [riff] = readPhrases(text);
 * riff?.id; // => 'back-door'
 * riff?.notes.map(({ degree }) => degree); // => ['1', '3', '5']
 * readPhrases('name: Back door\nkind: rif\n-2'); // throws PHRASE_INVALID
 * ```
 */
export function readPhrases(text: string, options: ReadPhrasesOptions = {}): readonly Phrase[] {
  const { id = 'own' } = requireOptions(options, OPTIONS, 'readPhrases');
  if (typeof text !== 'string' || text.length > LONGEST_TEXT) {
    throw invalidPhrase(text, `text of phrases, at most ${LONGEST_TEXT} characters`);
  }
  const isJson = /^\s*[[{]/u.test(text);
  const phrases = isJson ? readJsonPhrases(text, id) : parseHeadedTab(text, idOf(id, 'own'));
  if (phrases.length === 0) throw invalidPhrase(text, 'text with a phrase in it');
  return requireOwnIds(phrases);
}

function readJsonPhrases(text: string, usualId: string): readonly Phrase[] {
  const json = readJson(text);
  const all: readonly unknown[] = Array.isArray(json) ? json : [json];
  return all.map((each, index) => {
    const path = Array.isArray(json) ? `[${index}]` : '';
    try {
      return readPhrase(withId(each, index === 0 ? usualId : `${usualId}-${index + 1}`));
    } catch (error) {
      if (!isReedplateError(error)) throw error;
      const { code, value, expected, nearest, where } = error;
      const at = [path, where.path ?? ''].filter((part) => part !== '').join('.');
      const place = { ...where, path: at, line: lineOfPath(text, at) };
      throw new ReedplateError({ code, value, expected, nearest, where: place });
    }
  });
}

/** A phrase that has a name or nothing gets the id that it would have in tab. */
function withId(json: unknown, usual: string): unknown {
  if (typeof json !== 'object' || json === null || Array.isArray(json) || 'id' in json) return json;
  const name = 'name' in json && typeof json.name === 'string' ? json.name : undefined;
  return { ...json, id: idOf(name, idOf(usual, 'own')) };
}

/** The phrases, if no two of them have the same id: by it a phrase is asked for. */
export function requireOwnIds(phrases: readonly Phrase[]): readonly Phrase[] {
  const seen = new Set<string>();
  for (const { id } of phrases) {
    if (seen.has(id)) throw invalidPhrase(id, 'an id that no other of these phrases has');
    seen.add(id);
  }
  return Object.freeze(phrases);
}

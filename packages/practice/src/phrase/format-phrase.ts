import { type HarpLike, type KnownTunings, toHarp } from '@reedplate/layout';
import { parseMetre } from '@reedplate/line';
import { type OptionNames, requireOptions } from '@reedplate/pitch';
import { songKeyOf } from '@reedplate/position';
import { formatTimedTab, type TabDialectId, type TimedTab, tabOfLine } from '@reedplate/tab';
import { knownParts } from '../known.js';
import { easiestPath } from './easiest-path.js';
import { phraseChart } from './harmony.js';
import { homeTonic } from './home-tonic.js';
import { lineOfPhrase } from './line-of-phrase.js';
import { formatManner } from './note-words.js';
import type { Phrase } from './phrase.js';
import { type KnownPhrases, type PhraseLike, toPhrase } from './to-phrase.js';

/** How {@link formatPhrase} writes. */
export interface FormatPhraseOptions {
  /** Default C. */
  readonly harp?: HarpLike;
  /** Default the position of the phrase. */
  readonly position?: Phrase['position'];
  /** Default `plus-minus`. */
  readonly dialect?: TabDialectId;
  /** Phrases of one's own, and tunings for a harp that is named in one. */
  readonly known?: KnownTunings & KnownPhrases;
}

const OPTIONS: OptionNames<FormatPhraseOptions> = {
  harp: true,
  position: true,
  dialect: true,
  known: true,
};

/**
 * Writes a phrase as tablature with rhythm in a position, in the octave it is kept in, with the easiest
 * soundings and bar lines: what {@link parsePhrase} reads back to the same notes.
 *
 * @throws ReedplateError `SOUNDING_IMPOSSIBLE` with `where.bar` where the harp lacks a note in that octave,
 *   which {@link placePhrase} would look for in another; `PHRASE_UNKNOWN`, `NUMBER_RANGE`, `OPTION_UNKNOWN`
 * @example
 * ```ts
 * import { formatPhrase, parsePhrase } from '@reedplate/practice';
 *
 * const phrase = parsePhrase('-3:1/2;scoop -4:1/2 -2:3', { harmony: 'I7' });
 * formatPhrase(phrase); // => '-3:1/2;scoop -4:1/2 -2:3'
 * formatPhrase('no-such-phrase'); // throws PHRASE_UNKNOWN
 * ```
 */
export function formatPhrase(given: PhraseLike, options: FormatPhraseOptions = {}): string {
  const asked = requireOptions(options, OPTIONS, 'formatPhrase');
  const known = knownParts(asked.known);
  const phrase = toPhrase(given, known.phrases);
  const { harp: like = 'C', position = phrase.position, dialect } = asked;
  const harp = toHarp(like, known.tunings);
  const key = songKeyOf(harp, position);
  const line = lineOfPhrase(
    phrase,
    phraseChart(phrase, key.tonic),
    homeTonic(harp, key.pitchClass),
  );
  const path = easiestPath(line, harp, 'overbends', key.pitchClass);
  const soundings = path === undefined ? {} : { soundings: path.soundings };
  return writeBars(tabOfLine(line, harp, soundings), phrase, dialect);
}

/** The marks with their manners (a rest has none), and a bar line where a bar begins with a mark or a rest. */
function writeBars(
  timed: readonly TimedTab[],
  { metre, pickup, notes }: Phrase,
  dialect: TabDialectId | undefined,
): string {
  const { beatTicks, barTicks } = parseMetre(metre);
  const manners = new Map(notes.map((note) => [note.at, formatManner(note)]));
  const words: string[] = [];
  let beat = 0;
  for (const each of timed) {
    const at = Math.round(beat * beatTicks);
    const begins = at > 0 && (at - pickup) % barTicks === 0;
    if (begins) words.push('|');
    const manner = manners.get(at) ?? '';
    words.push(formatTimedTab([each], dialect === undefined ? {} : { dialect }) + manner);
    beat += each.beats;
  }
  return words.join(' ');
}

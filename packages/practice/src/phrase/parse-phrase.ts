import { type Harp, type HarpLike, type KnownTunings, toHarp } from '@reedplate/layout';
import { parseMetre } from '@reedplate/line';
import { type OptionNames, requireOptions, SCALE_DEGREES, toPitchClass } from '@reedplate/pitch';
import { songKeyOf } from '@reedplate/position';
import { parseTimedTab, soundMark, type TabDialectId } from '@reedplate/tab';
import { phraseChart, phraseTicks, plainHarmony, rootAbove } from './harmony.js';
import { homeTonic } from './home-tonic.js';
import { invalidPhrase } from './invalid-phrase.js';
import { makePhrase, PHRASE_DETAILS, type PhraseDetails } from './make-phrase.js';
import { splitManners } from './note-words.js';
import type { Phrase, PhraseNote } from './phrase.js';

/** What {@link parsePhrase} is told besides the tab. */
export interface ParsePhraseOptions extends PhraseDetails {
  /** The harp that the tab is written for; default C. */
  readonly harp?: HarpLike;
  /** Default `plus-minus`. */
  readonly dialect?: TabDialectId;
  /** Tunings of one's own, for a harp that is named in one. */
  readonly known?: KnownTunings;
}

const OPTIONS: OptionNames<ParsePhraseOptions> = {
  ...PHRASE_DETAILS,
  harp: true,
  dialect: true,
  known: true,
};

const LONGEST_TEXT = 20_000;

/**
 * Reads a phrase from tablature with rhythm in a position, and turns it into degrees. Behind a mark and
 * its length a semicolon may say how it is played: `-3:2;scoop`, `-4;accent`, `-3':1/8;grace`,
 * `-4:1;accent+fall100`. A move of pitch without a figure is of 50 cents. `position` and `harmony` say
 * what the marks mean; they default to second position over a bar of I7.
 *
 * @throws ReedplateError `TAB_SYNTAX` with line and column, `PHRASE_INVALID`, `HOLE_RANGE`,
 *   `SOUNDING_IMPOSSIBLE`, `OPTION_UNKNOWN`, `HARP_INVALID`, `KEY_UNKNOWN`
 * @example
 * ```ts
 * import { parsePhrase } from '@reedplate/practice';
 *
 * const phrase = parsePhrase('-2 -3:1/2;scoop -4:1/2 +4:2', { position: 2, harmony: 'I7' });
 * phrase.notes.map(({ degree }) => degree); // => ['1', '3', '5', '4']
 * parsePhrase('-2 -x'); // throws TAB_SYNTAX
 * parsePhrase('-2;loud'); // throws PHRASE_INVALID
 * ```
 */
export function parsePhrase(text: string, options: ParsePhraseOptions = {}): Phrase {
  const asked = requireOptions(options, OPTIONS, 'parsePhrase');
  const { harp = 'C', dialect, known, ...details } = asked;
  if (typeof text !== 'string' || text.length > LONGEST_TEXT) {
    throw invalidPhrase(text, `tab of at most ${LONGEST_TEXT} characters`);
  }
  const harmony = plainHarmony(details.harmony ?? '| I7 |');
  return makePhrase(notesOfTab(text, toHarp(harp, known), { ...details, harmony, dialect }), {
    ...details,
    harmony,
  });
}

interface Reading extends PhraseDetails {
  readonly harmony: string;
  readonly dialect: TabDialectId | undefined;
}

/** The marks of a tab as degrees, each with its time and manner. */
function notesOfTab(text: string, harp: Harp, reading: Reading): readonly PhraseNote[] {
  const { metre = '4/4', pickup = 0, position = 2, dialect, harmony } = reading;
  const { beatTicks } = parseMetre(metre);
  const end = phraseTicks({ harmony, metre, pickup });
  const home = homeTonic(harp, songKeyOf(harp, position).pitchClass);
  const rootAt = rootsOf(harp, reading);
  const { tab, manners } = splitManners(text);
  const holes = harp.holes.length;
  const timed = parseTimedTab(tab, { holes, ...(dialect === undefined ? {} : { dialect }) });
  let beat = 0;
  return timed.flatMap(({ marks, beats }, index) => {
    const at = Math.round(beat * beatTicks);
    beat += beats;
    const length = Math.max(1, Math.round(beat * beatTicks) - at);
    if (marks.length > 0 && at + length > end) {
      throw invalidPhrase(text, `tab no longer than its chords, ${harmony}`);
    }
    return marks.map((mark): PhraseNote => {
      const above = soundMark(mark, harp).pitch - home - rootAt(at);
      const degree = SCALE_DEGREES[toPitchClass(above)] as PhraseNote['degree'];
      return { at, length, degree, octave: Math.floor(above / 12), ...manners[index] };
    });
  });
}

/** Semitones of the root above the tonic at a tick; 0 where degrees are counted from the key. */
function rootsOf(harp: Harp, reading: Reading): (tick: number) => number {
  const { from = 'key', metre = '4/4', feel = 'shuffle', pickup = 0, position = 2 } = reading;
  if (from !== 'chord') return () => 0;
  const { tonic } = songKeyOf(harp, position);
  const chart = phraseChart({ harmony: reading.harmony, metre, feel, pickup }, tonic);
  return (tick) => rootAbove(chart, tick);
}

import type { Phrase } from '../phrase/phrase.js';
import { type PhraseGroup, phraseOfRow } from './phrase-row.js';
import { ROWS_CALLS } from './rows-calls.js';
import { ROWS_CHORD_RHYTHMS } from './rows-chord-rhythms.js';
import { ROWS_CHORUSES } from './rows-choruses.js';
import { ROWS_ENDINGS } from './rows-endings.js';
import { ROWS_FIFTH } from './rows-fifth.js';
import { ROWS_FILLS } from './rows-fills.js';
import { ROWS_FIRST } from './rows-first.js';
import { ROWS_FOURTH } from './rows-fourth.js';
import { ROWS_INTROS } from './rows-intros.js';
import { ROWS_JAZZ } from './rows-jazz.js';
import { ROWS_LICKS_SECOND } from './rows-licks-second.js';
import { ROWS_LICKS_SECOND_LONG } from './rows-licks-second-long.js';
import { ROWS_LICKS_SECOND_SLOW } from './rows-licks-second-slow.js';
import { ROWS_OVERBLOWS } from './rows-overblows.js';
import { ROWS_RIFFS } from './rows-riffs.js';
import { ROWS_THIRD } from './rows-third.js';
import { ROWS_TURNAROUNDS } from './rows-turnarounds.js';
import { ROWS_TWELFTH } from './rows-twelfth.js';

/** The rows of the catalogue: to add a phrase, add a row to the file of its kind. */
export const PHRASE_GROUPS: readonly PhraseGroup[] = [
  ROWS_FILLS,
  ROWS_LICKS_SECOND,
  ROWS_LICKS_SECOND_SLOW,
  ROWS_LICKS_SECOND_LONG,
  ROWS_RIFFS,
  ROWS_OVERBLOWS,
  ROWS_CALLS,
  ROWS_TURNAROUNDS,
  ROWS_ENDINGS,
  ROWS_INTROS,
  ROWS_CHORD_RHYTHMS,
  ROWS_FIRST,
  ROWS_THIRD,
  ROWS_FOURTH,
  ROWS_FIFTH,
  ROWS_TWELFTH,
  ROWS_JAZZ,
  ROWS_CHORUSES,
];

let read: readonly Phrase[] | undefined;

/**
 * The catalogue; its rows are read when it is first asked for. Measured: that takes 0.4 to 0.6 s of processor
 * time, and every search as long again if they were not kept.
 */
export function allPhrases(): readonly Phrase[] {
  read ??= Object.freeze(
    PHRASE_GROUPS.flatMap(({ rows, ...shared }) => rows.map((row) => phraseOfRow(row, shared))),
  );
  return read;
}

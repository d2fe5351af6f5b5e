import { parseMetre } from '@reedplate/line';
import { levelOfTab } from '../phrase/level-of-tab.js';
import type { PhraseDetails } from '../phrase/make-phrase.js';
import { parsePhrase } from '../phrase/parse-phrase.js';
import type { Phrase, PhraseGrade, PhraseKind } from '../phrase/phrase.js';

/** A row of the catalogue: a phrase as teachers write it, for a C harp in its position. */
export interface PhraseRow extends Omit<PhraseDetails, 'pickup' | 'level' | 'source'> {
  readonly id: string;
  readonly kind: PhraseKind;
  readonly grade: PhraseGrade;
  readonly trains: string;
  /** Felt beats before the first bar; default none. */
  readonly pickup?: number;
  /** Timed tab with manners, as `parsePhrase` reads it. */
  readonly tab: string;
}

/** Rows that share what they do not say themselves. */
export interface PhraseGroup extends PhraseDetails {
  readonly rows: readonly PhraseRow[];
}

const SOURCE = 'made for this catalogue';

/** The phrase of a row. Its level is what its marks need. */
export function phraseOfRow({ tab, pickup = 0, ...row }: PhraseRow, shared: PhraseDetails): Phrase {
  const details = { ...shared, ...row };
  const { beatTicks } = parseMetre(details.metre ?? '4/4');
  return parsePhrase(tab, {
    source: SOURCE,
    ...details,
    level: levelOfTab(tab),
    pickup: pickup * beatTicks,
  });
}

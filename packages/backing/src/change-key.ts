import type { Chart, ChordSpan } from '@reedplate/form';
import {
  chordOfNumeral,
  type Key,
  numeralOfChord,
  type OptionNames,
  requireInteger,
  requireOptions,
  toKey,
  transposeKey,
} from '@reedplate/pitch';

/** When a band goes on in another key. */
export interface KeyChange {
  /** Choruses after which the key changes, and again after as many more; from 1. */
  readonly after: number;
  /** Semitones up, or down below 0; -11 to 11. */
  readonly by: number;
}

const CHANGE_OPTIONS: OptionNames<KeyChange> = { after: true, by: true };

/**
 * A chart that goes on in another key after some choruses. Its numerals are still counted from the key that it
 * begins in, so that it stays one chart.
 *
 * @throws ReedplateError `NUMBER_RANGE`, `OPTION_UNKNOWN`
 */
export function changeKey(chart: Chart, change: KeyChange): Chart {
  const { after, by } = requireOptions(change, CHANGE_OPTIONS, 'a change of key');
  requireInteger(after, { min: 1, max: 1000, what: 'choruses before the key changes' });
  requireInteger(by, { min: -11, max: 11, what: 'semitones between keys' });
  const home = toKey(chart.key);
  const spans = chart.spans.map((span) => {
    const times = Math.floor(Math.max(0, span.chorus - 1) / after);
    const up = (((times * by) % 12) + 12) % 12;
    return up === 0 ? span : spanIn(span, transposeKey(home, up), home);
  });
  return { ...chart, spans };
}

function spanIn(span: ChordSpan, key: Key, home: Key): ChordSpan {
  if (span.numeral === null) return span;
  const { symbol } = chordOfNumeral(span.numeral, key);
  const numeral = numeralOfChord(symbol, home).text;
  // As the key that the chart is written in spells it.
  return { ...span, numeral, chord: chordOfNumeral(numeral, home) };
}

import type { Chart } from '@reedplate/form';
import { type Chord, chordOfNumeral, type Key, ReedplateError } from '@reedplate/pitch';
import { TWELVE_BARS } from './weights.js';

/** A chord of a song with the share of its time, 0 to 1. */
export interface SongChord {
  readonly chord: Chord;
  readonly share: number;
}

/**
 * The chords of a song, the longest sounding first: those of a chart, or Roman numerals in equal
 * shares, or the basic twelve bars in the key.
 *
 * @throws ReedplateError `CHART_INVALID` without a chord, `NUMERAL_UNKNOWN`
 */
export function songChords(
  key: Key,
  given: Chart | readonly string[] | undefined,
): readonly SongChord[] {
  if (given === undefined) return shared(twelveBars(key));
  return shared('spans' in given ? spansOf(given) : numeralsIn(key, given));
}

type Lasting = readonly [chord: Chord, time: number];

function twelveBars(key: Key): readonly Lasting[] {
  return TWELVE_BARS[key.mode].map(([numeral, bars]) => [chordOfNumeral(numeral, key), bars]);
}

function numeralsIn(key: Key, numerals: readonly string[]): readonly Lasting[] {
  return numerals.map((numeral) => [chordOfNumeral(numeral, key), 1]);
}

function spansOf({ spans }: Chart): readonly Lasting[] {
  return spans.flatMap(({ chord, start, end }): Lasting[] =>
    chord === null ? [] : [[chord, end - start]],
  );
}

function shared(lasting: readonly Lasting[]): readonly SongChord[] {
  const bySymbol = new Map<string, { chord: Chord; time: number }>();
  let total = 0;
  for (const [chord, time] of lasting) {
    const known = bySymbol.get(chord.symbol);
    bySymbol.set(chord.symbol, { chord, time: time + (known?.time ?? 0) });
    total += time;
  }
  if (bySymbol.size === 0) {
    throw new ReedplateError({ code: 'CHART_INVALID', value: [], expected: 'at least one chord' });
  }
  return [...bySymbol.values()]
    .map(({ chord, time }) => ({ chord, share: time / total }))
    .sort((a, b) => b.share - a.share);
}

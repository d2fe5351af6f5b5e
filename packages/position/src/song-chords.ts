import { type Chart, formById, makeChart, requireChart, toMinor } from '@reedplate/form';
import { type Chord, chordOfNumeral, type Key, ReedplateError } from '@reedplate/pitch';

/** A chord of a song with the share of its time, 0 to 1. */
export interface SongChord {
  readonly chord: Chord;
  readonly share: number;
}

/**
 * The chords of a song, the longest sounding first: those of a chart, or Roman numerals in equal
 * shares, or the form `basic` in the key, which is what a band plays when nothing is said.
 *
 * @throws ReedplateError `CHART_INVALID` without a chord, `NUMERAL_UNKNOWN`
 */
export function songChords(
  key: Key,
  given: Chart | readonly string[] | undefined,
): readonly SongChord[] {
  if (given === undefined) return shared(spansOf(basicChart(key)));
  return shared(Array.isArray(given) ? numeralsIn(key, given) : spansOf(given as Chart));
}

type Lasting = readonly [chord: Chord, time: number];

function basicChart(key: Key): Chart {
  const form = formById('basic');
  return makeChart(key.mode === 'minor' ? toMinor(form) : form, key);
}

function numeralsIn(key: Key, numerals: readonly string[]): readonly Lasting[] {
  return numerals.map((numeral) => [chordOfNumeral(numeral, key), 1]);
}

function spansOf(chart: Chart): readonly Lasting[] {
  return requireChart(chart).spans.flatMap(({ chord, start, end }): Lasting[] =>
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

import type { Chart } from '@reedplate/form';
import { type Chord, chordOfNumeral, type Key, ReedplateError } from '@reedplate/pitch';
import { TWELVE_BARS } from './weights.js';

/** A chord of a song with the share of its time, 0 to 1. */
export interface SongChord {
  readonly chord: Chord;
  readonly share: number;
}

/**
 * The chords of a chart, or of the basic twelve bars in the key; the longest sounding first.
 *
 * @throws ReedplateError `CHART_INVALID` for a chart without a chord
 */
export function songChords(key: Key, chart?: Chart): readonly SongChord[] {
  return shared(chart === undefined ? twelveBars(key) : spansOf(chart));
}

type Lasting = readonly [chord: Chord, time: number];

function twelveBars(key: Key): readonly Lasting[] {
  return TWELVE_BARS[key.mode].map(([numeral, bars]) => [chordOfNumeral(numeral, key), bars]);
}

function spansOf(chart: Chart): readonly Lasting[] {
  return chart.spans.flatMap(({ chord, start, end }): Lasting[] =>
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

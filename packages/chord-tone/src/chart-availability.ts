import type { Chart } from '@reedplate/form';
import { type HarpLike, toHarp } from '@reedplate/layout';
import { requireOptions } from '@reedplate/pitch';
import {
  AVAILABILITY_OPTIONS,
  type AvailabilityOptions,
  type ChordAvailability,
  chordAvailability,
} from './availability.js';
import { checkChart } from './check-chart.js';
import { styleOfKey } from './styles.js';

/** What a harp gives a chord of a chart. */
export interface ChartChordAvailability extends ChordAvailability {
  /** The Roman numerals it is written as, each once. */
  readonly numerals: readonly string[];
  /** The bars of the chart in which it sounds, from 1. */
  readonly bars: readonly number[];
}

/**
 * What a harp gives each chord of a chart, once for each chord, in the order in which they come.
 *
 * @param options default style that of the chart's key
 * @throws ReedplateError `CHART_INVALID`, and as `chordAvailability`
 * @example
 * ```ts
 * import { chartAvailability } from '@reedplate/chord-tone';
 * import { formById, makeChart } from '@reedplate/form';
 *
 * const chart = makeChart('quick-change', 'G');
 * const chords = chartAvailability(chart, 'C');
 * chords.map(({ chord }) => chord.symbol); // => ['G7', 'C7', 'D7']
 * chords[2]?.bars; // => [9, 12]
 * chords[2]?.whole; // => []
 * ```
 */
export function chartAvailability(
  chart: Chart,
  given: HarpLike,
  options: AvailabilityOptions = {},
): readonly ChartChordAvailability[] {
  const checked = requireOptions(options, AVAILABILITY_OPTIONS, 'chartAvailability');
  checkChart(chart);
  const harp = toHarp(given, checked.known);
  const { style = styleOfKey(chart.key) } = checked;
  const chords = new Map(
    chart.spans.flatMap(({ chord }) => (chord ? [[chord.symbol, chord]] : [])),
  );
  return Object.freeze(
    [...chords].map(([symbol, chord]) => {
      const spans = chart.spans.filter((span) => span.chord?.symbol === symbol);
      const numerals = new Set(spans.flatMap(({ numeral }) => numeral ?? []));
      return Object.freeze({
        ...chordAvailability(chord, harp, { ...options, style }),
        numerals: Object.freeze([...numerals]),
        bars: Object.freeze([...new Set(spans.map(({ bar }) => bar))]),
      });
    }),
  );
}

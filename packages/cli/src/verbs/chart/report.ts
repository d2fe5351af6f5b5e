import type { Chart } from '@reedplate/form';

/** A chord within a bar of a chart. */
export interface ChartChord {
  /** Felt beat it begins on, from 1. */
  readonly beat: number;
  /** Null in a break (N.C.). */
  readonly numeral: string | null;
  /** Null in a break (N.C.). */
  readonly chord: string | null;
}

/** One bar of a chart. */
export interface ChartBar {
  readonly bar: number;
  readonly chorus: number;
  readonly chords: readonly ChartChord[];
}

/** What `reedplate chart --json` prints. */
export interface ChartReport {
  /** The bars, for reading. */
  readonly bars: readonly ChartBar[];
  /** The same chart with exact times and chord tones, for computing. */
  readonly chart: Chart;
}

/**
 * A chart bar by bar, with Roman numerals and chord names.
 *
 */
export function chartReport(chart: Chart): ChartReport {
  const bars = new Map<number, { bar: number; chorus: number; chords: ChartChord[] }>();
  for (const { bar, chorus, beat, numeral, chord } of chart.spans) {
    const entry = bars.get(bar) ?? { bar, chorus, chords: [] };
    entry.chords.push({ beat, numeral, chord: chord?.symbol ?? null });
    bars.set(bar, entry);
  }
  return { bars: [...bars.values()], chart };
}

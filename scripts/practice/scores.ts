import { scoreLine } from '@reedplate/chord-tone';
import type { Chart } from '@reedplate/form';
import { type Line, parseMetre } from '@reedplate/line';
import { findPhrases, type Phrase } from '@reedplate/practice';
import { placeOwn } from './place-own.js';
import { melodyOf, variety } from './yardsticks.js';

/** A phrase with its marks. */
export interface ScoredPhrase {
  readonly phrase: Phrase;
  /** How much of it fits its chords, 0 to 1. */
  readonly fit: number;
  /** What a student would read, 0 to 100. */
  readonly total: number;
  readonly bars: number;
  readonly variety: number;
}

/** Every phrase of the catalogue over the chords that it was made for. */
export function scorePhrases(): readonly ScoredPhrase[] {
  return findPhrases().map((phrase) => {
    const { chart, line } = placeOwn(phrase);
    const { measures, total } = scoreLine(line, chart);
    const ticks = (chart.spans.at(-1)?.end ?? 0) - phrase.pickup;
    return {
      phrase,
      fit: measures.chordFit ?? 0,
      total: total ?? 0,
      bars: Math.round(ticks / parseMetre(phrase.metre).barTicks),
      variety: variety(melodyOf(line)),
    };
  });
}

/** Totals of lines, each over its chords. */
export function totalsOf(
  takes: readonly { readonly line: Line; readonly chart: Chart }[],
): readonly number[] {
  return takes.map(({ line, chart }) => scoreLine(line, chart).total);
}

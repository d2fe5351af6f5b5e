import { scoreLine } from '@reedplate/chord-tone';
import { makeChart } from '@reedplate/form';
import { parseMetre } from '@reedplate/line';
import { songKeyOf } from '@reedplate/position';
import {
  composeLine,
  findPhrases,
  type Phrase,
  phraseChart,
  placePhrase,
} from '@reedplate/practice';
import { readSolos } from '../../packages/chord-tone/validity/read-solos.js';
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
    const chart = phraseChart(phrase, songKeyOf('C', phrase.position).tonic);
    const placed = placePhrase(phrase, { chart, harp: 'C', level: phrase.level });
    if (!placed.playable) throw new Error(`${phrase.id} is not playable`);
    const { measures, total } = scoreLine(placed.line, chart);
    const ticks = (chart.spans.at(-1)?.end ?? 0) - phrase.pickup;
    return {
      phrase,
      fit: measures.chordFit ?? 0,
      total: total ?? 0,
      bars: Math.round(ticks / parseMetre(phrase.metre).barTicks),
      variety: variety(melodyOf(placed.line)),
    };
  });
}

/** Totals of composed choruses, seeds 1 to 40. */
export function composedTotals(): readonly number[] {
  const chart = makeChart('basic', 'G');
  return Array.from(
    { length: 40 },
    (_, at) => scoreLine(composeLine(chart, 'C', { seed: at + 1 }).line, chart).total ?? 0,
  );
}

/** Totals of the solos in a file, each over its own chords. */
export function soloTotals(file: string): readonly number[] {
  return readSolos(file).map(({ line, chart }) => scoreLine(line, chart).total ?? 0);
}

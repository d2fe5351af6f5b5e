import { type OptionNames, requireInteger, requireOptions } from '@reedplate/pitch';
import type { PositionNumber } from '@reedplate/position';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { mean, quantileSorted, sampleWithReplacement } from 'simple-statistics';
import { wilsonInterval } from './compare/wilson.js';
import { inOrder } from './in-order.js';
import type { StudyCell, StudyResult } from './study.js';
import { type ComparedFigure, figureOf } from './tune-figure.js';

/** A figure with its 95 % interval over the tunes; one tune says nothing of others, and gives null. */
export interface StudyFigure {
  readonly value: number;
  readonly low: number | null;
  readonly high: number | null;
}

/** What a study found of a tuning in a position at a level, over all its tunes. */
export interface StudyCellSummary {
  readonly tuning: string;
  readonly position: PositionNumber;
  /** Id of the level or the player. */
  readonly level: string;
  readonly tunes: number;
  /** Share of the tunes that can be played whole. */
  readonly wholeShare: StudyFigure;
  /** Mean effort an event, over the tunes that can be played whole; null where there are none. */
  readonly effortPerEvent: StudyFigure | null;
  /** Mean bends, and overbends, in a hundred events of the tunes that can be played whole. */
  readonly bendsPerHundred: StudyFigure | null;
  readonly overbendsPerHundred: StudyFigure | null;
}

/** How {@link summariseStudy} draws its intervals. */
export interface StudySummaryOptions {
  /** Resamples of the tunes, 100 to 100,000; default 1,000. */
  readonly resamples?: number;
  /** Seed of the resampling; default 1. The same seed gives the same intervals. */
  readonly seed?: number;
}

/** The names of the options of a summary. */
export const SUMMARY_OPTIONS: OptionNames<StudySummaryOptions> = { resamples: true, seed: true };

/**
 * Sums the results of a study up, cell by cell, with 95 % intervals: of shares Wilson's (1927), of means a
 * percentile bootstrap over the tunes (Efron 1979, from memory), the same tunes drawn for every cell of equal number.
 * The order of the results changes nothing.
 *
 * @throws ReedplateError `STUDY_INVALID` for no result or results of different setups,
 * `NUMBER_RANGE` for the options
 * @example
 * ```ts
 * import { makeStudySetup, studyTune, summariseStudy } from '@reedplate/study';
 *
 * const text = '{"key":"C","line":{"notes":[{"start":0,"duration":960,"pitch":64}]}}';
 * const found = studyTune(text, 1, makeStudySetup({ positions: [1] }));
 * const [cell] = summariseStudy('cells' in found ? [found] : []);
 * cell?.wholeShare; // => { value: 1, low: null, high: null }
 * summariseStudy([]); // throws STUDY_INVALID
 * ```
 */
export function summariseStudy(
  results: Iterable<StudyResult>,
  options: StudySummaryOptions = {},
): readonly StudyCellSummary[] {
  const { resamples = 1000, seed = 1 } = requireOptions(options, SUMMARY_OPTIONS, 'summariseStudy');
  requireInteger(resamples, { min: 100, max: 100_000, what: 'resamples' });
  requireInteger(seed, { what: 'a seed' });
  const all = inOrder(results);
  return Object.freeze(
    (all[0] as StudyResult).cells.map(({ tuning, position, level }, at) => {
      const valuesOf = (figure: ComparedFigure): readonly number[] =>
        all.flatMap((result) => figureOf(figure, result.cells[at] as StudyCell, result) ?? []);
      const meanOf = (figure: ComparedFigure): StudyFigure | null => {
        const values = valuesOf(figure);
        return values.length === 0 ? null : bootstrap(values, resamples, seed);
      };
      const whole = valuesOf('wholeShare');
      return Object.freeze({
        tuning,
        position,
        level,
        tunes: whole.length,
        wholeShare: shareOf(whole),
        effortPerEvent: meanOf('effortPerEvent'),
        bendsPerHundred: meanOf('bendsPerHundred'),
        overbendsPerHundred: meanOf('overbendsPerHundred'),
      });
    }),
  );
}

function shareOf(whole: readonly number[]): StudyFigure {
  const found = whole.reduce((sum, each) => sum + each, 0);
  const value = found / whole.length;
  if (whole.length < 2) return Object.freeze({ value, low: null, high: null });
  const [low, high] = wilsonInterval(found, whole.length);
  return Object.freeze({ value, low, high });
}

function bootstrap(values: readonly number[], resamples: number, seed: number): StudyFigure {
  if (values.length < 2) return Object.freeze({ value: mean([...values]), low: null, high: null });
  const generator = xoroshiro128plus(seed);
  const random = () => uniformFloat64(generator);
  const all = [...values];
  const means = Array.from({ length: resamples }, () =>
    mean(sampleWithReplacement(all, all.length, random)),
  ).sort((a, b) => a - b);
  return Object.freeze({
    value: mean(all),
    low: quantileSorted(means, 0.025),
    high: quantileSorted(means, 0.975),
  });
}

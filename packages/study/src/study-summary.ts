import { type OptionNames, ReedplateError, requireInteger, requireOptions } from '@reedplate/pitch';
import type { PositionNumber } from '@reedplate/position';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { mean, quantileSorted, sampleWithReplacement } from 'simple-statistics';
import type { StudyCell, StudyResult } from './study.js';

/** A figure with its 95 % interval over the tunes. */
export interface StudyFigure {
  readonly value: number;
  readonly low: number;
  readonly high: number;
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
 * Sums the results of a study up, cell by cell, with 95 % intervals: percentile bootstrap over the
 * tunes (Efron 1979, from memory), the same tunes drawn for every cell of equal number.
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
 * cell?.wholeShare; // => { value: 1, low: 1, high: 1 }
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
  return Object.freeze(
    gather(results).map(({ cell, whole, effort, bends, overbends }) => {
      const interval = (values: readonly number[]) => bootstrap(values, resamples, seed);
      return Object.freeze({
        tuning: cell.tuning,
        position: cell.position,
        level: cell.level,
        tunes: whole.length,
        wholeShare: interval(whole),
        effortPerEvent: effort.length === 0 ? null : interval(effort),
        bendsPerHundred: bends.length === 0 ? null : interval(bends),
        overbendsPerHundred: overbends.length === 0 ? null : interval(overbends),
      });
    }),
  );
}

/** The figures of one cell, a number a tune. */
interface Gathered {
  readonly cell: StudyCell;
  readonly whole: number[];
  readonly effort: number[];
  readonly bends: number[];
  readonly overbends: number[];
}

function gather(results: Iterable<StudyResult>): readonly Gathered[] {
  let gathered: readonly Gathered[] = [];
  let setup: readonly string[] | undefined;
  for (const result of results) {
    const { cells, events, number } = result;
    if (setup === undefined) {
      setup = setupOf(result);
      gathered = cells.map((cell) => ({ cell, whole: [], effort: [], bends: [], overbends: [] }));
    }
    requireSame(setup, setupOf(result), number);
    for (const [at, cell] of cells.entries()) add(gathered[at] as Gathered, cell, events);
  }
  if (setup === undefined) failNoResult();
  return gathered;
}

/** What a result tells of its setup. Effort under another model is not the same figure. */
function setupOf({ model, cells }: StudyResult): readonly string[] {
  return [model, ...cells.map(({ tuning, position, level }) => `${tuning} ${position} ${level}`)];
}

function add({ whole, effort, bends, overbends }: Gathered, cell: StudyCell, events: number): void {
  const isWhole = cell.playableShare === 1;
  whole.push(isWhole ? 1 : 0);
  if (!isWhole) return;
  effort.push(cell.effortPerEvent);
  bends.push((100 * cell.bends) / events);
  overbends.push((100 * cell.overbends) / events);
}

function requireSame(expected: readonly string[], found: readonly string[], line: number): void {
  const most = Math.max(expected.length, found.length);
  for (let at = 0; at < most; at += 1) {
    if (found[at] === expected[at]) continue;
    throw new ReedplateError({
      code: 'STUDY_INVALID',
      value: found[at] ?? 'the end',
      expected: `results of one setup (here ${expected[at] ?? 'the end'})`,
      where: { line },
    });
  }
}

function failNoResult(): never {
  throw new ReedplateError({ code: 'STUDY_INVALID', value: [], expected: 'one result or more' });
}

function bootstrap(values: readonly number[], resamples: number, seed: number): StudyFigure {
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

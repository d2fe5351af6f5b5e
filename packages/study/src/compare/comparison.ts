import { type OptionNames, requireInteger, requireOneOf } from '@reedplate/pitch';
import type { StudyResult } from '../study.js';
import { COMPARED_FIGURES, type ComparedFigure } from '../tune-figure.js';
import { holmAdjusted } from './holm.js';
import { type PairedDifference, pairedFigures, type Resampling } from './paired.js';

/** How a comparison is made. */
export interface ComparisonOptions {
  /** Default `effortPerEvent`. */
  readonly figure?: ComparedFigure;
  /** Resamples of the tunes, 100 to 100,000; default 1,000. */
  readonly resamples?: number;
  /** Default 1. The same seed gives the same intervals. */
  readonly seed?: number;
}

/** The names of {@link ComparisonOptions}. */
export const COMPARISON_OPTIONS: OptionNames<ComparisonOptions> = {
  figure: true,
  resamples: true,
  seed: true,
};

/** The options of a comparison, filled in and checked. */
export function readComparison(options: ComparisonOptions): Required<ComparisonOptions> {
  const { figure = 'effortPerEvent', resamples = 1000, seed = 1 } = options;
  return {
    figure: requireOneOf(figure, COMPARED_FIGURES, { what: 'a figure to compare' }),
    resamples: requireInteger(resamples, { min: 100, max: 100_000, what: 'resamples' }),
    seed: requireInteger(seed, { what: 'a seed' }),
  };
}

/** How much a second way lies above a first, over the tunes that can be compared. */
export interface StudyComparison {
  readonly first: string;
  readonly second: string;
  /** What both share: tuning, position or level. */
  readonly where: string;
  readonly figure: ComparedFigure;
  /** Tunes that both play whole; of `wholeShare` all tunes. */
  readonly tunes: number;
  /** Families that these are of; a tune that names none is one of its own. */
  readonly families: number;
  /** Mean of second less first, its 95 % interval, effect size and chance; null for fewer than two families. */
  readonly difference: StudyDifference | null;
}

/** A difference between two ways, with what is known of it. */
export interface StudyDifference {
  readonly value: number;
  /** 95 % interval: percentile bootstrap over families. */
  readonly low: number;
  readonly high: number;
  /** Mean over the standard deviation of the differences; null where all are equal. */
  readonly effectSize: number | null;
  /** Two-sided, by random signs. */
  readonly probability: number;
  /** The same, corrected after Holm for all comparisons of the call. */
  readonly corrected: number;
}

/** A comparison before its figures. */
export interface PairedTunes extends Pick<StudyComparison, 'first' | 'second' | 'where'> {
  readonly pairs: readonly PairedDifference[];
}

/** The difference of one tune; none where one of both has no figure. */
export function pairOf(
  first: number | undefined,
  second: number | undefined,
  { family, number }: StudyResult,
): readonly PairedDifference[] {
  if (first === undefined || second === undefined) return [];
  return [{ difference: second - first, family: family ?? `tune ${number}` }];
}

/** The figures of comparisons that are made together. */
export function compared(
  comparisons: readonly PairedTunes[],
  figure: ComparedFigure,
  resampling: Resampling,
): readonly StudyComparison[] {
  const found = comparisons.map(({ pairs, ...named }) => {
    const families = new Set(pairs.map(({ family }) => family)).size;
    const figures = families < 2 ? undefined : pairedFigures(pairs, resampling);
    return { ...named, figure, tunes: pairs.length, families, figures };
  });
  const chances = found.flatMap(({ figures }) => (figures ? [figures.probability] : []));
  const corrected = [...holmAdjusted(chances)];
  return Object.freeze(
    found.map(({ figures, ...named }) => {
      const difference =
        figures && Object.freeze({ ...figures, corrected: corrected.shift() as number });
      return Object.freeze({ ...named, difference: difference ?? null });
    }),
  );
}

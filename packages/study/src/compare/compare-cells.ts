import { type OptionNames, ReedplateError, requireOneOf, requireOptions } from '@reedplate/pitch';
import { inOrder } from '../in-order.js';
import type { StudyCell, StudyResult } from '../study.js';
import { figureOf } from '../tune-figure.js';
import {
  COMPARISON_OPTIONS,
  type ComparisonOptions,
  compared,
  type PairedTunes,
  pairOf,
  readComparison,
  type StudyComparison,
} from './comparison.js';

/** What of a setup is compared. */
export const COMPARED_PARTS = Object.freeze(['tuning', 'position', 'level'] as const);

/** A part of a setup that is compared: its tunings, its positions or its levels. */
export type ComparedPart = (typeof COMPARED_PARTS)[number];

/** What {@link compareCells} compares. */
export interface CompareCellsOptions extends ComparisonOptions {
  /** Default `tuning`. */
  readonly part?: ComparedPart;
  /** What all others are compared with: an id, or the number of a position; default the first of the setup. */
  readonly against?: string | number;
}

const OPTIONS: OptionNames<CompareCellsOptions> = {
  ...COMPARISON_OPTIONS,
  part: true,
  against: true,
};

/**
 * Compares the tunings of a study, its positions or its levels over the same tunes: each with one of them, where all
 * else is equal. Intervals of two tunings apart overlap where their difference, tune for tune, is plain.
 *
 * @param results in any order
 * @throws ReedplateError `STUDY_INVALID` for no result, results of different setups, or a setup that lacks what the
 *   others are compared with or has nothing else; `OPTION_UNKNOWN`, `NUMBER_RANGE`
 * @example
 * ```ts
 * import { compareCells, makeStudySetup, studyTune } from '@reedplate/study';
 *
 * const setup = makeStudySetup({ tunings: ['standard', 'raised-third-blow'], positions: [1] });
 * const results = [0, 2, 4, 5].flatMap((up, at) => {
 *   const notes = [60, 64, 69].map((pitch, i) => ({ start: i * 960, duration: 960, pitch: pitch + up }));
 *   const found = studyTune(JSON.stringify({ key: 'C', line: { notes } }), at + 1, setup);
 *   return 'cells' in found ? [found] : [];
 * });
 * const [third] = compareCells(results, { figure: 'wholeShare' });
 * third?.second; // => 'raised-third-blow'
 * third?.tunes; // => 4
 * compareCells(results, { against: 'standrad' }); // throws STUDY_INVALID
 * ```
 */
export function compareCells(
  results: Iterable<StudyResult>,
  options: CompareCellsOptions = {},
): readonly StudyComparison[] {
  const {
    part: asked = 'tuning',
    against,
    ...rest
  } = requireOptions(options, OPTIONS, 'compareCells');
  const part = requireOneOf(asked, COMPARED_PARTS, { what: 'a part of a setup' });
  const { figure, ...resampling } = readComparison(rest);
  const all = inOrder(results);
  const cells = (all[0] as StudyResult).cells;
  const base = baseOf(cells, part, against);
  const comparisons = cells.flatMap((cell, at): readonly PairedTunes[] => {
    const other = cells.findIndex((each) => each[part] === base && isBeside(each, cell, part));
    if (cell[part] === base || other < 0) return [];
    const pairs = all.flatMap((result) => {
      const [first, second] = [result.cells[other], result.cells[at]] as [StudyCell, StudyCell];
      return pairOf(figureOf(figure, first, result), figureOf(figure, second, result), result);
    });
    return [{ first: `${base}`, second: `${cell[part]}`, where: whereOf(cell, part), pairs }];
  });
  return compared(comparisons, figure, resampling);
}

function baseOf(
  cells: readonly StudyCell[],
  part: ComparedPart,
  against: string | number | undefined,
): string | number {
  const known = [...new Set(cells.map((cell) => cell[part]))];
  const base = against === undefined ? known[0] : known.find((each) => `${each}` === `${against}`);
  if (base !== undefined && known.length > 1) return base;
  throw new ReedplateError({
    code: 'STUDY_INVALID',
    value: against ?? known,
    expected: `one of two ${part}s or more of the results: ${known.join(', ')}`,
  });
}

const isBeside = (one: StudyCell, other: StudyCell, part: ComparedPart): boolean =>
  COMPARED_PARTS.every((each) => each === part || one[each] === other[each]);

const whereOf = (cell: StudyCell, part: ComparedPart): string =>
  COMPARED_PARTS.filter((each) => each !== part)
    .map((each) => (each === 'position' ? `position ${cell.position}` : cell[each]))
    .join(', ');

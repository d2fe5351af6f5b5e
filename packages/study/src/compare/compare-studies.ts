import { ReedplateError, requireOptions } from '@reedplate/pitch';
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

/**
 * Compares two studies of the same tunes, cell by cell: such as two effort models, or two tempos.
 *
 * @param first in any order, as `second` is
 * @throws ReedplateError `STUDY_INVALID` for no result, results of different setups on one side, other cells or other
 *   tunes on both sides; `OPTION_UNKNOWN`, `NUMBER_RANGE`
 * @example
 * ```ts
 * import { compareStudies, makeStudySetup, studyTune } from '@reedplate/study';
 *
 * const studied = (model: string) => [60, 62, 64].flatMap((pitch, at) => {
 *   const text = JSON.stringify({ key: 'C', line: { notes: [{ start: 0, duration: 960, pitch }] } });
 *   const found = studyTune(text, at + 1, makeStudySetup({ model, positions: [1], levels: ['natural'] }));
 *   return 'cells' in found ? [found] : [];
 * });
 * const [cell] = compareStudies(studied('beginner'), studied('advanced'));
 * [cell?.first, cell?.second, cell?.tunes]; // => ['beginner', 'advanced', 3]
 * compareStudies([], []); // throws STUDY_INVALID
 * ```
 */
export function compareStudies(
  first: Iterable<StudyResult>,
  second: Iterable<StudyResult>,
  options: ComparisonOptions = {},
): readonly StudyComparison[] {
  const { figure, ...resampling } = readComparison(
    requireOptions(options, COMPARISON_OPTIONS, 'compareStudies'),
  );
  const [ours, theirs] = [inOrder(first), inOrder(second)];
  for (const [at, result] of ours.entries()) requireSameTune(result, theirs[at]);
  requireSameTune(theirs[ours.length], ours[ours.length]);
  const [one, other] = [ours[0] as StudyResult, theirs[0] as StudyResult];
  const comparisons = one.cells.map((cell, at): PairedTunes => {
    const pairs = ours.flatMap((result, tune) => {
      const cells = [result.cells[at], theirs[tune]?.cells[at]] as [StudyCell, StudyCell];
      const [a, b] = cells.map((each) => figureOf(figure, each, result));
      return pairOf(a, b, result);
    });
    return { ...namesOf(one, other), where: nameOf(cell), pairs };
  });
  return compared(comparisons, figure, resampling);
}

const nameOf = ({ tuning, position, level }: StudyCell): string =>
  `${tuning}, position ${position}, ${level}`;

/** Models of one name are told apart by the digests of their studies. */
function namesOf(one: StudyResult, other: StudyResult): Pick<PairedTunes, 'first' | 'second'> {
  const isTold = one.model !== other.model;
  const nameIn = ({ model, digest }: StudyResult): string =>
    isTold ? model : `${model} ${digest}`;
  return { first: nameIn(one), second: nameIn(other) };
}

function requireSameTune(one: StudyResult | undefined, other: StudyResult | undefined): void {
  if (tuneIn(one) === tuneIn(other)) return;
  throw new ReedplateError({
    code: 'STUDY_INVALID',
    value: tuneIn(other ?? one),
    expected: `two studies of the same tunes in the same cells (here ${tuneIn(one)})`,
  });
}

const tuneIn = (result: StudyResult | undefined): string =>
  result === undefined
    ? 'no tune'
    : `tune ${result.number} ${result.id ?? ''} of ${result.events} events in ${result.cells.map(nameOf).join('; ')}`;

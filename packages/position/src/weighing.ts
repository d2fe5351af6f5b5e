import { ReedplateError } from '@reedplate/pitch';
import { PICK_WEIGHTS, type PickCriterion } from './weights.js';

/** What each criterion counts for. */
export type CriteriaWeights = Readonly<Record<PickCriterion, number>>;

const CRITERIA = Object.keys(PICK_WEIGHTS) as readonly PickCriterion[];

/**
 * The weights given, completed from the defaults.
 *
 * @throws ReedplateError `NUMBER_RANGE` for a weight below 0, or where nothing but a line counts
 */
export function readWeights(given: Partial<CriteriaWeights> = {}): CriteriaWeights {
  const weights = { ...PICK_WEIGHTS, ...given };
  for (const criterion of CRITERIA) {
    const value: unknown = weights[criterion];
    if (typeof value === 'number' && value >= 0 && Number.isFinite(value)) continue;
    throw wrongWeight(value, `a weight of ${criterion} from 0`);
  }
  const { chordTones, wholeChords, scale, home } = weights;
  if (chordTones + wholeChords + scale + home > 0) return weights;
  throw wrongWeight(given, 'a weight above 0 of chordTones, wholeChords, scale or home');
}

function wrongWeight(value: unknown, expected: string): ReedplateError {
  return new ReedplateError({
    code: 'NUMBER_RANGE',
    value,
    expected,
    where: { path: 'weights' },
  });
}

/** The mean of the criteria there are, each by its weight. */
export function weightedMean(
  weights: CriteriaWeights,
  values: Readonly<Record<PickCriterion, number | undefined>>,
): number {
  let sum = 0;
  let total = 0;
  for (const criterion of CRITERIA) {
    const value = values[criterion];
    if (value === undefined) continue;
    sum += value * weights[criterion];
    total += weights[criterion];
  }
  return sum / total;
}

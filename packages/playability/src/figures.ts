import type { EffortModel, HoleRanks } from './effort-model.js';
import { STEPS_PER_SECOND } from './line-times.js';
import type { EffortWeightId } from './weights.js';

/** Weights whose unit is a time or a rate, which enter effort only through others. */
type TimeId =
  | 'moveTime'
  | 'turnTime'
  | 'bendTime'
  | 'comfort'
  | 'capacity'
  | 'recovery'
  | 'chordAir';

/**
 * A model in whole thousandths of a point, so that sums are exact and ties are ties on every
 * machine; times stay in seconds, and air counts in steps.
 */
export interface Figures {
  readonly cost: { readonly [Weight in Exclude<EffortWeightId, TimeId>]: number };
  readonly moveTime: number;
  readonly turnTime: number;
  readonly bendTime: number;
  readonly recovery: number;
  readonly chordAir: number;
  /** Air steps from half full, either way. */
  readonly comfortSteps: number;
  readonly capacitySteps: number;
  /** Thousandths of a point an air step. */
  readonly strainStep: number;
  readonly snatchStep: number;
  readonly holeRanks: HoleRanks;
}

/**
 * Thousandths in a point.
 *
 * @internal
 */
export const POINT = 1000;

/** From points a second to thousandths an air step. */
const STEP_POINT = POINT / STEPS_PER_SECOND;

/**
 * Effort in points from thousandths.
 *
 * @internal
 */
export const inPoints = (thousandths: number): number => thousandths / POINT;

/** The figures of a model. */
export function figuresOf({ weights, holeRanks }: EffortModel): Figures {
  const { moveTime, turnTime, bendTime, comfort, capacity, recovery, chordAir, ...points } =
    weights;
  const cost = Object.fromEntries(
    Object.entries(points).map(([id, value]) => [id, Math.round(value * POINT)]),
  ) as Figures['cost'];
  return {
    cost,
    moveTime,
    turnTime,
    bendTime,
    recovery,
    chordAir,
    comfortSteps: Math.round(comfort * STEPS_PER_SECOND),
    capacitySteps: Math.round(capacity * STEPS_PER_SECOND),
    strainStep: Math.round(weights.airStrain * STEP_POINT),
    snatchStep: Math.round(weights.airSnatch * STEP_POINT),
    holeRanks,
  };
}

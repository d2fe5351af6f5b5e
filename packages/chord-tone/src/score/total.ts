import { itemAt } from '@reedplate/pitch';
import type { Following } from './following.js';
import { chargeOf, type Reading } from './readings.js';
import type { CalibrationPoint, ScoreWeights } from './weights.js';

/** What a total is made of. */
export interface TotalParts {
  /** Null where nothing was judged. */
  readonly chordFit: number | null;
  readonly following: Following | null;
  readonly readings: readonly Reading[];
  /** Share of the bars that is silent. */
  readonly silent: number;
  /** Mean distance of onsets from the grid, in felt beats. */
  readonly loose: number | null;
}

/**
 * The total: half chord fit, half following; less what another reading explains; laid on the scale from 0
 * to 100; less what silence and loose time take off.
 */
export function totalOf(parts: TotalParts, weights: ScoreWeights): number {
  const { chordFit, following, readings, silent, loose } = parts;
  if (chordFit === null) return 0;
  const share = weights.followingShare;
  const raw = following === null ? chordFit : share * following.above + (1 - share) * chordFit;
  const told = calibrate(raw * (1 - chargeOf(readings, weights)), weights.calibration);
  const played = Math.max(0, 1 - weights.silence * silent);
  const late = weights.looseCost * Math.max(0, (loose ?? 0) - weights.looseFree);
  return told * played * Math.max(0, 1 - late);
}

/** Reads a calibration: straight lines between its points, level beyond them. */
export function calibrate(raw: number, points: readonly CalibrationPoint[]): number {
  const above = points.findIndex((point) => raw < point.raw);
  if (above === 0) return itemAt(points, 0).total;
  if (above === -1) return itemAt(points, -1).total;
  const [low, high] = [itemAt(points, above - 1), itemAt(points, above)];
  return low.total + ((raw - low.raw) / (high.raw - low.raw)) * (high.total - low.total);
}

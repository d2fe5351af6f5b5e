import type { ScoreMeasures } from './score-types.js';
import type { CalibrationPoint, ScoreMeasureWeights, ScoreWeights } from './weights.js';

/** The total of measures and the chance level of the same line. */
export function totalOf(measures: ScoreMeasures, chance: number, weights: ScoreWeights): number {
  const raw = weightedMean(measures, weights.measures);
  if (raw === null) return 0;
  const above = (weights.typicalChance - chance) * weights.chanceShare;
  return calibrate(raw + fitShare(measures, weights.measures) * above, weights.calibration);
}

const MEASURED = [
  'fit',
  'landing',
  'coverage',
  'chordToneShare',
  'guideToneShare',
  'resolution',
  'timing',
] as const satisfies readonly (keyof ScoreMeasureWeights)[];

/** Measures that say nothing (null) leave their share to the others. */
function weightedMean(measures: ScoreMeasures, weights: ScoreMeasureWeights): number | null {
  let sum = 0;
  let total = 0;
  for (const name of MEASURED) {
    const value = measures[name];
    if (value === null) continue;
    sum += weights[name] * value;
    total += weights[name];
  }
  return total === 0 ? null : sum / total;
}

function fitShare(measures: ScoreMeasures, weights: ScoreMeasureWeights): number {
  const total = MEASURED.reduce(
    (sum, name) => sum + (measures[name] === null ? 0 : weights[name]),
    0,
  );
  return total === 0 ? 0 : weights.fit / total;
}

/** Reads a calibration: straight lines between its points, level beyond them. */
export function calibrate(raw: number, points: readonly CalibrationPoint[]): number {
  const above = points.findIndex((point) => raw < point.raw);
  if (above === 0) return points[0]?.total ?? 0;
  const low = points.at(above === -1 ? -1 : above - 1);
  const high = points[above];
  if (low === undefined || high === undefined) return low?.total ?? 0;
  return low.total + ((raw - low.raw) / (high.raw - low.raw)) * (high.total - low.total);
}

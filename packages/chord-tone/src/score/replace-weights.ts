import { ReedplateError, requireFields } from '@reedplate/pitch';
import { type CalibrationPoint, SCORE_WEIGHTS, type ScoreWeights } from './weights.js';

/** Parts of {@link SCORE_WEIGHTS} to replace, down to single figures; the rest stays. */
export interface WeightChanges
  extends Partial<Omit<ScoreWeights, 'credit' | 'landing' | 'faults'>> {
  readonly credit?: Partial<ScoreWeights['credit']>;
  readonly landing?: Partial<ScoreWeights['landing']>;
  readonly faults?: Partial<ScoreWeights['faults']>;
}

type Table = 'credit' | 'landing' | 'faults';
type Figure = Exclude<keyof ScoreWeights, Table | 'calibration'>;

/** Largest time in beats, cost and figure of a calibration: far beyond any use. */
const LARGEST = 1000;

const LARGEST_FIGURE: Readonly<Record<Figure, number>> = {
  resolvedCredit: 1,
  struck: LARGEST,
  resolveWithin: LARGEST,
  pushWithin: 1,
  landWithin: LARGEST,
  blindFrom: 1_000_000,
  followingShare: 1,
  faultsFrom: 1,
  silence: LARGEST,
  looseFree: LARGEST,
  looseCost: LARGEST,
};

const FIGURES = Object.keys(LARGEST_FIGURE) as readonly Figure[];
const PARTS = Object.keys(SCORE_WEIGHTS) as readonly (keyof ScoreWeights)[];

/**
 * The default weights with parts replaced.
 *
 * @throws ReedplateError `OPTION_UNKNOWN` for a part or figure that does not exist, `NUMBER_RANGE`
 *   for one out of range, each with `where.path`
 */
export function replaceWeights(changes: WeightChanges): ScoreWeights {
  const given = requireFields(changes, PARTS, { code: 'OPTION_UNKNOWN', path: 'weights' });
  const replaced = FIGURES.map((name) => {
    const path = `weights.${name}`;
    return [name, figureOr(SCORE_WEIGHTS[name], given[name], LARGEST_FIGURE[name], path)];
  });
  return {
    ...(Object.fromEntries(replaced) as Record<Figure, number>),
    credit: replaceIn(SCORE_WEIGHTS.credit, given.credit, 1, 'weights.credit'),
    landing: replaceIn(SCORE_WEIGHTS.landing, given.landing, 1, 'weights.landing'),
    faults: replaceIn(SCORE_WEIGHTS.faults, given.faults, 1, 'weights.faults'),
    calibration: requireCalibration(given.calibration ?? SCORE_WEIGHTS.calibration),
  };
}

function replaceIn<Name extends string>(
  table: Readonly<Record<Name, number>>,
  changes: unknown = {},
  max: number,
  path: string,
): Readonly<Record<Name, number>> {
  const names = Object.keys(table) as Name[];
  const given = requireFields(changes, names, { code: 'OPTION_UNKNOWN', path });
  return Object.fromEntries(
    names.map((name) => [name, figureOr(table[name], given[name], max, `${path}.${name}`)]),
  ) as Record<Name, number>;
}

function figureOr(standard: number, value: unknown, max: number, path: string): number {
  return value === undefined ? standard : requireFigure(value, 0, max, path);
}

function requireCalibration(points: unknown): readonly CalibrationPoint[] {
  if (!Array.isArray(points) || points.length === 0) {
    throw outOfRange(points, 'a list of at least one point', 'weights.calibration');
  }
  let before: CalibrationPoint = { raw: Number.NEGATIVE_INFINITY, total: -LARGEST };
  return points.map((point: unknown, index) => {
    const path = `weights.calibration[${index}]`;
    const given = requireFields(point, ['raw', 'total'], { code: 'OPTION_UNKNOWN', path });
    const raw = requireFigure(given.raw, -LARGEST, LARGEST, `${path}.raw`);
    if (raw <= before.raw) throw outOfRange(raw, `more than ${before.raw}`, `${path}.raw`);
    before = { raw, total: requireFigure(given.total, before.total, LARGEST, `${path}.total`) };
    return before;
  });
}

function requireFigure(value: unknown, min: number, max: number, path: string): number {
  if (typeof value === 'number' && value >= min && value <= max) return value;
  throw outOfRange(value, `a number from ${min} to ${max}`, path);
}

function outOfRange(value: unknown, expected: string, path: string): ReedplateError {
  return new ReedplateError({ code: 'NUMBER_RANGE', value, expected, where: { path } });
}

import { TECHNIQUE_LEVELS, type TechniqueLevel } from '@reedplate/layout';
import {
  deepFreeze,
  type OptionNames,
  ReedplateError,
  requireOneOf,
  requireOptions,
} from '@reedplate/pitch';
import type { EffortModel, EffortWeights, HoleRanks } from './effort-model.js';
import { EFFORT_MODELS } from './effort-models.js';
import { type EffortModelLike, type KnownModels, toEffortModel } from './to-effort-model.js';
import { EFFORT_WEIGHT_IDS } from './weights.js';

/** What {@link makeEffortModel} changes; all that is left out is taken from the model it begins with. */
export interface EffortModelSpec {
  /** Default `own`. */
  readonly id?: string;
  readonly name?: string;
  readonly use?: string;
  readonly level?: TechniqueLevel;
  /** Figures to replace, each from 0 to 1,000. */
  readonly weights?: Partial<EffortWeights>;
  /** Ranks to replace, each list of 1 to 16 figures from 0 to 1. */
  readonly holeRanks?: Partial<HoleRanks>;
}

const SPEC_OPTIONS: OptionNames<EffortModelSpec> = {
  id: true,
  name: true,
  use: true,
  level: true,
  weights: true,
  holeRanks: true,
};

/** Largest figure of a weight; keeps every sum of efforts an exact whole number of thousandths. */
const LARGEST_WEIGHT = 1000;
/** Longest breath in seconds; bounds the states of the search. */
const LONGEST_BREATH = 60;

/**
 * An effort model made from another by replacing figures.
 *
 * @param from a model, or the id of one in the catalogue
 * @throws ReedplateError `MODEL_UNKNOWN`; `MODEL_INVALID` naming the field, for a figure out of
 * range, a weight that does not exist, or a capacity below the comfort limit
 * @example
 * ```ts
 * import { makeEffortModel } from '@reedplate/playability';
 *
 * makeEffortModel('intermediate', { weights: { overblow: 6 } }).weights.overblow; // => 6
 * makeEffortModel('intermediate', { weights: { overblow: -1 } }); // throws MODEL_INVALID
 * ```
 */
export function makeEffortModel(from: EffortModelLike, spec: EffortModelSpec = {}): EffortModel {
  const options = requireOptions(spec, SPEC_OPTIONS, 'makeEffortModel');
  const { id = 'own', name, use, level, weights = {}, holeRanks = {} } = options;
  const base = toEffortModel(from);
  return checkEffortModel({
    id,
    name: name ?? base.name,
    use: use ?? base.use,
    level: level ?? base.level,
    weights: { ...base.weights, ...weights },
    holeRanks: { ...base.holeRanks, ...holeRanks },
  });
}

/**
 * A model from the catalogue or from data, checked and frozen.
 *
 * @throws ReedplateError `MODEL_UNKNOWN` or `MODEL_INVALID`
 *
 * @internal
 */
export function readEffortModel(model: EffortModelLike, known?: KnownModels): EffortModel {
  const found = toEffortModel(model, known);
  return CHECKED.has(found) ? found : checkEffortModel(found);
}

/**
 * Models that are known to be right and can no longer change; a model checked again would be another
 * object, with boards of its own. Measured: studying 40 tunes takes 0.09 s of processor time, 0.22 s without.
 */
const CHECKED = /* @__PURE__ */ (() => new WeakSet<EffortModel>(EFFORT_MODELS))();

function checkEffortModel({ id, name, use, level, weights, holeRanks }: EffortModel): EffortModel {
  const checked: EffortModel = deepFreeze({
    id: requireText(id, 'id'),
    name: requireText(name, 'name'),
    use: requireText(use, 'use'),
    level: requireOneOf(level, TECHNIQUE_LEVELS, {
      what: 'a technique level',
      code: 'MODEL_INVALID',
      where: { path: 'level' },
    }),
    weights: checkWeights(weights),
    holeRanks: {
      drawBend: checkRanks(holeRanks?.drawBend, 'holeRanks.drawBend'),
      blowBend: checkRanks(holeRanks?.blowBend, 'holeRanks.blowBend'),
      overbend: checkRanks(holeRanks?.overbend, 'holeRanks.overbend'),
    },
  });
  requireOwnId(checked);
  CHECKED.add(checked);
  return checked;
}

/** Results name their model by its id, so an id of the catalogue stands for the catalogue's figures alone. */
function requireOwnId(model: EffortModel): void {
  const builtIn = EFFORT_MODELS.find(({ id }) => id === model.id);
  if (builtIn === undefined || figuresOf(builtIn) === figuresOf(model)) return;
  const expected = 'an id of its own, where figures differ from those of the catalogue';
  throw invalidModel(model.id, expected, 'id');
}

function figuresOf({ level, weights, holeRanks }: EffortModel): string {
  const { drawBend, blowBend, overbend } = holeRanks;
  const figures = EFFORT_WEIGHT_IDS.map((id) => weights[id]);
  return JSON.stringify([level, figures, drawBend, blowBend, overbend]);
}

function checkWeights(weights: unknown): EffortWeights {
  if (typeof weights !== 'object' || weights === null) {
    throw invalidModel(weights, 'an object of weights', 'weights');
  }
  for (const field of Object.keys(weights)) {
    const where = { path: `weights.${field}` };
    requireOneOf(field, EFFORT_WEIGHT_IDS, { what: 'a weight', code: 'MODEL_INVALID', where });
  }
  const given = weights as EffortWeights;
  const checked = Object.fromEntries(
    EFFORT_WEIGHT_IDS.map((id) => [
      id,
      requireFigure(given[id], 0, LARGEST_WEIGHT, `weights.${id}`),
    ]),
  ) as EffortWeights;
  requireFigure(checked.comfort, 0, checked.capacity, 'weights.comfort');
  requireFigure(checked.capacity, 0, LONGEST_BREATH, 'weights.capacity');
  return checked;
}

function checkRanks(ranks: unknown, path: string): readonly number[] {
  if (!Array.isArray(ranks) || ranks.length < 1 || ranks.length > 16) {
    throw invalidModel(ranks, 'a list of 1 to 16 ranks', path);
  }
  return Array.from(ranks, (rank, index) => requireFigure(rank, 0, 1, `${path}[${index}]`));
}

function requireFigure(value: unknown, min: number, max: number, path: string): number {
  if (typeof value === 'number' && value >= min && value <= max) return value;
  throw invalidModel(value, `a number from ${min} to ${max}`, path);
}

function requireText(value: unknown, path: string): string {
  if (typeof value === 'string' && value !== '') return value;
  throw invalidModel(value, 'text', path);
}

function invalidModel(value: unknown, expected: string, path: string): ReedplateError {
  return new ReedplateError({ code: 'MODEL_INVALID', value, expected, where: { path } });
}

import type { KnownTunings } from '@reedplate/layout';
import { nearestOf, ReedplateError } from '@reedplate/pitch';
import type { EffortModel } from './effort-model.js';
import { EFFORT_MODELS } from './effort-models.js';

/** An effort model, or its id: one of the catalogue, or one of those given by `known`. */
export type EffortModelLike = EffortModel | string;

/** What is known by its id before the catalogues are asked: effort models too. */
export interface KnownModels extends KnownTunings {
  readonly models?: readonly EffortModel[];
}

const MODELS_BY_ID: ReadonlyMap<string, EffortModel> = /* @__PURE__ */ (() =>
  new Map(EFFORT_MODELS.map((model) => [model.id, model])))();

/**
 * The effort model itself, given as one or by its id.
 *
 * @internal
 * @throws ReedplateError `MODEL_UNKNOWN`, or `MODEL_INVALID` for what is no model
 */
export function toEffortModel(
  model: EffortModelLike,
  { models = [] }: KnownModels = {},
): EffortModel {
  if (typeof model !== 'string') return requireModel(model);
  const found = models.find(({ id }) => id === model) ?? MODELS_BY_ID.get(model);
  if (found !== undefined) return found;
  const ids = [...models.map(({ id }) => id), ...MODELS_BY_ID.keys()];
  throw new ReedplateError({
    code: 'MODEL_UNKNOWN',
    value: model,
    expected: `the id of an effort model: ${ids.join(', ')}`,
    nearest: nearestOf(model, ids),
  });
}

function requireModel(value: unknown): EffortModel {
  if (typeof value === 'object' && value !== null) return value as EffortModel;
  const where = { path: 'model' };
  throw new ReedplateError({ code: 'MODEL_INVALID', value, expected: 'a model', where });
}

import type { EffortModel } from './effort-model.js';
import { toEffortModel } from './to-effort-model.js';

/**
 * An effort model of the catalogue.
 *
 * @throws ReedplateError `MODEL_UNKNOWN`, with the nearest id
 * @example
 * ```ts
 * import { effortModelById } from '@reedplate/playability';
 *
 * effortModelById('beginner').weights.bend; // => 8
 * effortModelById('begginer'); // throws MODEL_UNKNOWN
 * ```
 */
export function effortModelById(id: string): EffortModel {
  return toEffortModel(id);
}

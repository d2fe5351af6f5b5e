import { toTuning } from './to-tuning.js';
import type { Tuning } from './tuning.js';
import type { TuningName } from './tunings.js';

/**
 * A tuning of the catalogue, by its id or by one of its aliases.
 *
 * @throws ReedplateError `TUNING_UNKNOWN`, with the nearest id
 * @example
 * ```ts
 * import { tuningById } from '@reedplate/layout';
 *
 * tuningById('natural-minor').label; // => 'Gm'
 * tuningById('country').id; // => 'raised-fifth-draw'
 * tuningById('natural-miner'); // throws TUNING_UNKNOWN
 * ```
 */
export function tuningById(id: TuningName): Tuning {
  return toTuning(id);
}

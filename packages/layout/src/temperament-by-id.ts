import type { Temperament } from './temperament.js';
import type { TemperamentName } from './temperaments.js';
import { toTemperament } from './to-temperament.js';

/**
 * A temperament of the catalogue.
 *
 * @throws ReedplateError `TEMPERAMENT_UNKNOWN`, with the nearest id
 * @example
 * ```ts
 * import { temperamentById } from '@reedplate/layout';
 *
 * temperamentById('seven-limit').cents[7]; // => 1.9550008653875466
 * temperamentById('just'); // throws TEMPERAMENT_UNKNOWN
 * ```
 */
export function temperamentById(id: TemperamentName): Temperament {
  return toTemperament(id) as Temperament;
}

import { nearestOf, ReedplateError } from '@reedplate/pitch';
import { makeTuning } from './make-tuning.js';
import type { Tuning } from './tuning.js';
import { TUNING_ROWS } from './tuning-rows.js';

/** Id of a tuning in the catalogue. */
export type TuningId = (typeof TUNING_ROWS)[number]['id'];

/** Id of a tuning as a user may write it: an editor completes those of the catalogue. */
export type TuningName = TuningId | (string & Record<never, never>);

/** The catalogue of tunings, the standard one first. */
export const TUNINGS: readonly Tuning[] = Object.freeze(TUNING_ROWS.map((row) => makeTuning(row)));

const TUNINGS_BY_ID: ReadonlyMap<string, Tuning> = new Map(
  TUNINGS.map((tuning) => [tuning.id, tuning]),
);

/**
 * A tuning of the catalogue.
 *
 * @throws ReedplateError `TUNING_UNKNOWN`, with the nearest id
 * @example
 * ```ts
 * import { tuningById } from '@reedplate/layout';
 *
 * tuningById('natural-minor').label; // => 'Gm'
 * tuningById('natural-miner'); // throws TUNING_UNKNOWN
 * ```
 */
export function tuningById(id: TuningName): Tuning {
  const tuning = TUNINGS_BY_ID.get(id);
  if (tuning !== undefined) return tuning;
  throw new ReedplateError({
    code: 'TUNING_UNKNOWN',
    value: id,
    expected: 'the id of a tuning in the catalogue',
    nearest: typeof id === 'string' ? nearestOf(id, TUNINGS_BY_ID.keys()) : undefined,
  });
}

import { makeTuning } from './make-tuning.js';
import type { Tuning } from './tuning.js';
import { TUNING_ROWS } from './tuning-rows.js';

/** Id of a tuning in the catalogue. */
export type TuningId = (typeof TUNING_ROWS)[number]['id'];

/** Id of a tuning as a user may write it: an editor completes those of the catalogue. */
export type TuningName = TuningId | (string & Record<never, never>);

/** The catalogue of tunings, the standard one first. */
export const TUNINGS: readonly Tuning[] = Object.freeze(TUNING_ROWS.map((row) => makeTuning(row)));

/** The catalogue by id. */
export const TUNINGS_BY_ID: ReadonlyMap<string, Tuning> = new Map(
  TUNINGS.map((tuning) => [tuning.id, tuning]),
);

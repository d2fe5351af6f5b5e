import { invalidTuning, makeTuning, type TuningSpec } from './make-tuning.js';
import type { Tuning } from './tuning.js';

/**
 * A tuning from a JSON value: one that was written by this library, or a {@link TuningSpec} with
 * rows of note names. Checked as {@link makeTuning} checks, and frozen.
 *
 * @param value what `JSON.parse` gave
 * @throws ReedplateError `TUNING_INVALID` with the hole and breath or the field, or `KEY_UNKNOWN`
 * @example
 * ```ts
 * import { readTuning, tuningById } from '@reedplate/layout';
 *
 * const text = JSON.stringify(tuningById('dorian'));
 * readTuning(JSON.parse(text)).label; // => 'Gm'
 * readTuning({ id: 'two', blow: 'C4 E4', draw: 'D4 G4' }).holes.length; // => 2
 * readTuning({ id: 'none' }); // throws TUNING_INVALID
 * ```
 */
export function readTuning(value: unknown): Tuning {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    throw invalidTuning(value, 'a tuning as an object', {});
  }
  // Every field is checked by makeTuning, whatever its type.
  const spec = value as TuningSpec;
  const holes: unknown = 'holes' in value ? value.holes : undefined;
  return makeTuning(holes === undefined ? spec : { ...spec, ...rowsOfHoles(holes) });
}

/** The two rows of holes that are given in order from hole 1 up. */
export function rowsOfHoles(holes: unknown): { blow: number[]; draw: number[] } {
  if (!Array.isArray(holes)) throw invalidTuning(holes, 'a list of holes', { path: 'holes' });
  const blow: number[] = [];
  const draw: number[] = [];
  for (const [index, reeds] of holes.entries()) {
    const hole = index + 1;
    if (typeof reeds !== 'object' || reeds === null || reeds.hole !== hole) {
      throw invalidTuning(reeds, `the two reeds of hole ${hole}`, { hole });
    }
    blow.push(reeds.blow);
    draw.push(reeds.draw);
  }
  return { blow, draw };
}

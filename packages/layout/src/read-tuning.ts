import { readJson, requireFields } from '@reedplate/pitch';
import { invalidTuning, makeTuning, type TuningSpec } from './make-tuning.js';
import type { Tuning } from './tuning.js';

const TUNING_FIELDS = [
  'id',
  'aliases',
  'name',
  'use',
  'source',
  'label',
  'labelPosition',
  'holes',
  'blow',
  'draw',
] as const;
const HOLE_FIELDS = ['hole', 'blow', 'draw'] as const;

/**
 * A tuning from parsed JSON, or from JSON text: the shape of {@link Tuning}, or that of
 * {@link TuningSpec} with rows of note names in place of `holes`. Checked as {@link makeTuning}
 * checks, and frozen. A field of another name is an error.
 *
 * @throws ReedplateError `JSON_MALFORMED`, `KEY_UNKNOWN`, or `TUNING_INVALID` with the hole and
 * breath or the field
 * @example
 * ```ts
 * import { readTuning, tuningById } from '@reedplate/layout';
 *
 * readTuning(JSON.stringify(tuningById('dorian'))).label; // => 'Gm'
 * readTuning({ id: 'two', blow: 'C4 E4', draw: 'D4 G4' }).holes.length; // => 2
 * readTuning({ id: 'none' }); // throws TUNING_INVALID
 * readTuning('{'); // throws JSON_MALFORMED
 * ```
 */
export function readTuning(json: unknown): Tuning {
  const { holes, ...spec } = requireFields(readJson(json), TUNING_FIELDS, {
    code: 'TUNING_INVALID',
  });
  // makeTuning checks each value; here only the names of the fields are known to be right.
  return makeTuning(
    (holes === undefined ? spec : { ...spec, ...rowsOfHoles(holes) }) as TuningSpec,
  );
}

/** The two rows of holes that are given in order from hole 1 up; the reeds are not checked yet. */
export function rowsOfHoles(holes: unknown): Record<'blow' | 'draw', unknown[]> {
  if (!Array.isArray(holes)) throw invalidTuning(holes, 'a list of holes', { path: 'holes' });
  const rows: Record<'blow' | 'draw', unknown[]> = { blow: [], draw: [] };
  for (const [index, value] of holes.entries()) {
    const path = `holes[${index}]`;
    const { hole, blow, draw } = requireFields(value, HOLE_FIELDS, {
      code: 'TUNING_INVALID',
      path,
    });
    if (hole !== index + 1) {
      throw invalidTuning(hole, `hole ${index + 1}, the holes being in order`, { path });
    }
    rows.blow.push(blow);
    rows.draw.push(draw);
  }
  return rows;
}

import { ReedplateError, readJson, requireFields } from '@reedplate/pitch';
import { type FormDetails, makeForm } from './make-form.js';
import type { Form, FormBar } from './types.js';

const FORM_FIELDS = [
  'id',
  'name',
  'description',
  'mode',
  'metre',
  'feel',
  'bars',
  'use',
  'source',
] as const;
const CHORD_FIELDS = ['numeral', 'weight'] as const;
const CODE = 'FORM_INVALID';

/**
 * A form from parsed JSON, or from JSON text: the shape of {@link Form}, of which only `bars` must
 * be there, checked as by {@link makeForm}. A field of another name is an error.
 *
 * @throws ReedplateError `JSON_MALFORMED`, `FORM_INVALID`, `METRE_UNKNOWN`, `OPTION_UNKNOWN`
 * @example
 * ```ts
 * import { readForm } from '@reedplate/form';
 *
 * readForm('{"bars":[[{"numeral":"i7","weight":1}]]}').mode; // => 'minor'
 * readForm('{"bars":'); // throws JSON_MALFORMED
 * readForm({ bars: [], name: 7 }); // throws FORM_INVALID
 * ```
 */
export function readForm(json: unknown): Form {
  const fields = requireFields(readJson(json), FORM_FIELDS, { code: CODE, path: '' });
  const { bars, mode, ...details } = fields;
  for (const [index, bar] of (Array.isArray(bars) ? bars : []).entries()) {
    for (const [at, chord] of (Array.isArray(bar) ? bar : []).entries()) {
      requireFields(chord, CHORD_FIELDS, { code: CODE, path: `bars[${index}][${at}]` });
    }
  }
  // makeForm checks each value; here only the names of the fields are known to be right.
  const form = makeForm(bars as readonly FormBar[], details as FormDetails);
  if (mode === undefined || mode === form.mode) return form;
  const expected = `${form.mode}, the mode of the tonic chord`;
  throw new ReedplateError({ code: CODE, value: mode, expected, where: { path: 'mode' } });
}

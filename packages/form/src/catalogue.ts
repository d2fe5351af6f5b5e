import { deepFreeze, nearestOf, ReedplateError } from '@reedplate/pitch';
import type { FormRow } from './form-row.js';
import { FORM_ROWS } from './forms.js';
import { parseForm } from './parse-form.js';
import type { Form } from './types.js';

/**
 * The catalogue of forms, every one with a different run of chords.
 *
 * @example
 * ```ts
 * import { FORMS } from '@reedplate/form';
 *
 * FORMS.find((form) => form.bars.length === 8)?.id; // => 'eight-bar'
 * ```
 */
export const FORMS: readonly Form[] = deepFreeze(FORM_ROWS.map(readRow));

function readRow({ bars, ...details }: FormRow): Form {
  return parseForm(bars, details);
}

const FORMS_BY_ID: ReadonlyMap<string, Form> = new Map(FORMS.map((form) => [form.id, form]));

/**
 * The form of the catalogue with this id.
 *
 * @throws ReedplateError `FORM_UNKNOWN`, with the nearest id
 * @example
 * ```ts
 * import { formById } from '@reedplate/form';
 *
 * formById('quick-change').bars[1]; // => [{ numeral: 'IV7', weight: 1 }]
 * formById('quick-chnage'); // throws FORM_UNKNOWN
 * ```
 */
export function formById(id: string): Form {
  const form = FORMS_BY_ID.get(id);
  if (form !== undefined) return form;
  throw new ReedplateError({
    code: 'FORM_UNKNOWN',
    value: id,
    expected: `one of the ${FORMS.length} ids of the catalogue, such as basic or quick-change`,
    nearest: typeof id === 'string' ? nearestOf(id, FORMS_BY_ID.keys()) : undefined,
  });
}

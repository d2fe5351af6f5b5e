import { nearestOf, ReedplateError } from '@reedplate/pitch';
import type { FormRow } from './form-row.js';
import { FORM_ROWS } from './forms.js';
import { readPlainBars } from './plain-bars.js';
import type { Form } from './types.js';

/** Id of a form of the catalogue. */
export type FormId = (typeof FORM_ROWS)[number]['id'];

/**
 * The catalogue of forms, no two with the same chords. Twelve-bar forms come first, the basic one
 * and the quick change before all others.
 *
 * @example
 * ```ts
 * import { FORMS } from '@reedplate/form';
 *
 * FORMS.find((form) => form.bars.length === 8)?.id; // => 'eight-bar'
 * ```
 */
export const FORMS: readonly Form[] = Object.freeze(FORM_ROWS.map(readRow));

function readRow(row: FormRow): Form {
  const { id, name, description, mode = 'major', metre = '4/4', feel = 'shuffle' } = row;
  const { use, source } = row;
  const bars = readPlainBars(row.bars);
  return Object.freeze({ id, name, description, mode, metre, feel, bars, use, source });
}

const FORMS_BY_ID: ReadonlyMap<string, Form> = new Map(FORMS.map((form) => [form.id, form]));

/**
 * The form of the catalogue with this id.
 *
 * @param id one of {@link FORMS}; an editor completes it
 * @throws ReedplateError `FORM_UNKNOWN`, with the nearest id
 * @example
 * ```ts
 * import { formById } from '@reedplate/form';
 *
 * formById('quick-change').bars[1]; // => [{ numeral: 'IV7', weight: 1 }]
 * formById('quick-chnage'); // throws FORM_UNKNOWN
 * ```
 */
export function formById(id: FormId | (string & Record<never, never>)): Form {
  const form = FORMS_BY_ID.get(id);
  if (form !== undefined) return form;
  throw new ReedplateError({
    code: 'FORM_UNKNOWN',
    value: id,
    expected: `one of the ${FORMS.length} ids of the catalogue, such as basic or quick-change`,
    nearest: typeof id === 'string' ? nearestOf(id, FORMS_BY_ID.keys()) : undefined,
  });
}

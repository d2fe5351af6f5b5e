import type { FormId } from './catalogue.js';
import { toForm } from './to-form.js';
import type { Form } from './types.js';

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
  return toForm(id);
}

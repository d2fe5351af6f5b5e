import { nearestOf, ReedplateError } from '@reedplate/pitch';
import { FORMS, FORMS_BY_ID, type FormId } from './catalogue.js';
import type { Form } from './types.js';

/** A form, or its id: one of the catalogue, or one of those given by `known`. */
export type FormLike = Form | FormId | (string & Record<never, never>);

/** Forms of one's own that are known by their id, before those of the catalogue. */
export interface KnownForms {
  readonly forms?: readonly Form[];
}

/**
 * The form itself, given as a form or by its id: how every function here takes a form.
 *
 * @internal
 * @throws ReedplateError `FORM_UNKNOWN`, or `FORM_INVALID` for what is no form
 * @example
 * ```ts
 * import { makeForm, toForm } from '@reedplate/form';
 *
 * toForm('basic').bars.length; // => 12
 * const mine = makeForm([[{ numeral: 'I7', weight: 1 }]], { id: 'mine' });
 * toForm('mine', { forms: [mine] }).bars.length; // => 1
 * toForm('mine'); // throws FORM_UNKNOWN
 * ```
 */
export function toForm(form: FormLike, { forms = [] }: KnownForms = {}): Form {
  if (isForm(form)) return form;
  if (typeof form !== 'string') throw noForm(form);
  const found = forms.find(({ id }) => id === form) ?? FORMS_BY_ID.get(form);
  if (found !== undefined) return found;
  throw new ReedplateError({
    code: 'FORM_UNKNOWN',
    value: form,
    expected: form.includes('|')
      ? 'the id of a form; parseForm reads bars'
      : `one of the ${FORMS.length} ids of the catalogue, such as basic or quick-change`,
    nearest:
      CALLED.get(form.toLowerCase()) ??
      nearestOf(form, [...forms.map(({ id }) => id), ...FORMS_BY_ID.keys()]),
  });
}

/** What players say for a form of the catalogue; common practice, no source. */
const CALLED: ReadonlyMap<string, FormId> = new Map([
  ['blues', 'basic'],
  ['12-bar', 'basic'],
  ['12-bar-blues', 'basic'],
  ['twelve-bar', 'basic'],
  ['twelve-bar-blues', 'basic'],
  ['8-bar', 'eight-bar'],
  ['8-bar-blues', 'eight-bar'],
  ['16-bar', 'sixteen-bar'],
  ['16-bar-blues', 'sixteen-bar'],
  ['24-bar', 'twenty-four-bar'],
]);

function isForm(value: unknown): value is Form {
  return (
    typeof value === 'object' &&
    value !== null &&
    'mode' in value &&
    'bars' in value &&
    Array.isArray(value.bars)
  );
}

function noForm(value: unknown): ReedplateError {
  return new ReedplateError({
    code: 'FORM_INVALID',
    value,
    expected: 'a form, or the id of one such as basic or quick-change',
  });
}

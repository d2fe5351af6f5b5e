import type { FormRow } from './form-row.js';
import { FORM_ROWS } from './forms.js';
import { readPlainBars } from './plain-bars.js';
import type { Form, FormBar } from './types.js';

/** Id of a form of the catalogue. */
export type FormId = (typeof FORM_ROWS)[number][0];

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
export const FORMS: readonly Form[] = /* @__PURE__ */ (() => {
  const known = new Map<string, FormBar>();
  return Object.freeze(FORM_ROWS.map((row) => readRow(row, known)));
})();

function readRow(row: FormRow, known: Map<string, FormBar>): Form {
  const [id, name, description, use, source, marks, unlike] = row;
  const { mode = 'major', metre = '4/4', feel = 'shuffle' } = unlike ?? {};
  const bars = readPlainBars(marks, known);
  return Object.freeze({ id, name, description, mode, metre, feel, bars, use, source });
}

/** The catalogue by id. */
export const FORMS_BY_ID: ReadonlyMap<string, Form> = /* @__PURE__ */ (() =>
  new Map(FORMS.map((form) => [form.id, form])))();

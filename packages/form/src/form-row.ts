import type { FormDetails } from './make-form.js';

/** A row of the catalogue: a form with its bars in lead-sheet marks. */
export interface FormRow extends Required<Omit<FormDetails, 'metre' | 'feel'>> {
  /** In the marks that `parseForm` reads; feel and metre stand before the first bar. */
  readonly bars: string;
}

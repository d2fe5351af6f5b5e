import type { FormRow } from './form-row.js';
import { EIGHT_BAR_FORMS } from './forms-eight-bar.js';
import { JAZZ_FORMS } from './forms-jazz.js';
import { LONGER_FORMS } from './forms-longer.js';
import { MINOR_FORMS } from './forms-minor.js';
import { OTHER_FORMS } from './forms-other.js';
import { TWELVE_BAR_FORMS } from './forms-twelve-bar.js';

/** Every row, in the order of the catalogue. */
export const FORM_ROWS: readonly FormRow[] = [
  ...TWELVE_BAR_FORMS,
  ...JAZZ_FORMS,
  ...MINOR_FORMS,
  ...EIGHT_BAR_FORMS,
  ...LONGER_FORMS,
  ...OTHER_FORMS,
];

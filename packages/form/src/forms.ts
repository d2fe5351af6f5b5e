import { EIGHT_BAR_FORMS } from './forms-eight-bar.js';
import { JAZZ_FORMS } from './forms-jazz.js';
import { LONGER_FORMS } from './forms-longer.js';
import { MINOR_FORMS } from './forms-minor.js';
import { OTHER_FORMS } from './forms-other.js';
import { TWELVE_BAR_FORMS } from './forms-twelve-bar.js';

/** Every row of the catalogue, in its order. */
export const FORM_ROWS = /* @__PURE__ */ (() =>
  [
    ...TWELVE_BAR_FORMS,
    ...JAZZ_FORMS,
    ...MINOR_FORMS,
    ...EIGHT_BAR_FORMS,
    ...LONGER_FORMS,
    ...OTHER_FORMS,
  ] as const)();

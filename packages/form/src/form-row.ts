import type { Metre } from '@reedplate/line';
import type { Mode } from '@reedplate/pitch';
import type { Feel } from './types.js';

/** A row of the catalogue: a form with its bars in lead-sheet marks. */
export interface FormRow {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly use: string;
  readonly source: string;
  /** Default `major`. */
  readonly mode?: Mode;
  /** Default `4/4`. */
  readonly metre?: Metre;
  /** Default `shuffle`. */
  readonly feel?: Feel;
  /** As {@link readPlainBars} reads them. */
  readonly bars: string;
}

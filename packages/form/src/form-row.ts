import type { Metre } from '@reedplate/line';
import type { Mode } from '@reedplate/pitch';
import type { Feel } from './types.js';

/** A row of the catalogue: a form with its bars in lead-sheet marks. */
export type FormRow = readonly [
  id: string,
  name: string,
  description: string,
  use: string,
  source: string,
  /** As {@link readPlainBars} reads them; a double bar line where a lead sheet begins a new line. */
  bars: string,
  unlike?: UnlikeMost,
];

/** How a form is unlike most: a major one in 4/4, played as a shuffle. */
interface UnlikeMost {
  readonly mode?: Mode;
  readonly metre?: Metre;
  readonly feel?: Feel;
}

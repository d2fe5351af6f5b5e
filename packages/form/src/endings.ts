import { type ClosingBars, type ClosingRow, closeForm, readClosingRows } from './closing-bars.js';
import { COMMON_PRACTICE, TWELVE_BAR } from './sources.js';
import { type FormByNameOptions, type FormLike, formByName } from './to-form.js';
import type { Form } from './types.js';

const ROWS = /* @__PURE__ */ (() =>
  [
    {
      id: 'one',
      name: 'Both bars on I',
      source: TWELVE_BAR,
      bars: '| I7 | I7 |',
    },
    {
      id: 'five-one',
      name: 'V–I in the last bar',
      source: COMMON_PRACTICE,
      bars: '| I7 | V7 I7 |',
    },
    {
      id: 'half-step-above',
      name: '♭II–I in the last bar',
      source: COMMON_PRACTICE,
      bars: '| I7 | bII7 I7 |',
    },
    {
      id: 'flat-six-five-one',
      name: '♭VI–V–I',
      source: COMMON_PRACTICE,
      bars: '| I7 bVI7 | V7 I7 |',
    },
    {
      id: 'four-diminished-one',
      name: 'I–IV–♯IV diminished–I–V–I',
      source: COMMON_PRACTICE,
      bars: '| I7 / IV7 #ivdim7 | I7 V7 I7 / |',
    },
    {
      id: 'four-one',
      name: 'IV–I',
      source: COMMON_PRACTICE,
      bars: '| I7 IV7 | I7 |',
    },
    {
      id: 'break-five-one',
      name: 'I, a break, then V–I',
      source: COMMON_PRACTICE,
      bars: '| I7 N.C. | V7 I7 |',
    },
    {
      id: 'minor-one',
      name: 'Both bars on i',
      mode: 'minor',
      source: COMMON_PRACTICE,
      bars: '| i7 | i7 |',
    },
    {
      id: 'minor-five-one',
      name: 'V–i in the last bar',
      mode: 'minor',
      source: COMMON_PRACTICE,
      bars: '| i7 | V7 i7 |',
    },
    {
      id: 'minor-flat-six-five-one',
      name: '♭VI–V–i',
      mode: 'minor',
      source: COMMON_PRACTICE,
      bars: '| i7 bVI7 | V7 i7 |',
    },
    {
      id: 'minor-four-one',
      name: 'iv–i',
      mode: 'minor',
      source: COMMON_PRACTICE,
      bars: '| i7 iv7 | i7 |',
    },
  ] as const satisfies readonly ClosingRow[])();

/** Id of an ending of the catalogue. */
export type EndingId = (typeof ROWS)[number]['id'];

/**
 * Endings: the last two bars of the last chorus, as chords that close on the tonic.
 *
 * @example
 * ```ts
 * import { ENDINGS } from '@reedplate/form';
 *
 * ENDINGS[1]?.bars[1]?.map(({ numeral }) => numeral); // => ['V7', 'I7']
 * ```
 */
export const ENDINGS: readonly ClosingBars[] = /* @__PURE__ */ readClosingRows(ROWS);

/**
 * The form with an ending of the catalogue, of its own mode, for its last two bars. For the last
 * chorus of a chart only, see the option `ending` of {@link makeChart}.
 *
 * @throws ReedplateError `OPTION_UNKNOWN` for an ending that is not there or of the other mode;
 * `FORM_INVALID` for a form of two bars or one
 * @example
 * ```ts
 * import { formatForm, withEnding } from '@reedplate/form';
 *
 * const form = withEnding('basic', 'half-step-above');
 * formatForm(form).split('\n')[2]; // => '| V7  | IV7 | I7 | bII7 I7 |'
 * withEnding('basic', 'minor-one'); // throws OPTION_UNKNOWN
 * ```
 */
export function withEnding(
  given: FormLike,
  ending: EndingId,
  options: FormByNameOptions = {},
): Form {
  const form = formByName(given, options, 'withEnding');
  return closeForm(form, ending, ENDINGS);
}

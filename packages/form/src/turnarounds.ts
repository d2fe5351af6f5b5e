import { type ClosingBars, type ClosingRow, closeForm, readClosingRows } from './closing-bars.js';
import { COMMON_PRACTICE, EIGHT_BAR, MAGAZINE, MEMORY, TWELVE_BAR_JAZZ } from './sources.js';
import { type FormByNameOptions, type FormLike, formByName } from './to-form.js';
import type { Form } from './types.js';

const ROWS = /* @__PURE__ */ (() =>
  [
    {
      id: 'five',
      name: 'V in the last bar',
      source: COMMON_PRACTICE,
      bars: '| I7 | V7 |',
    },
    {
      id: 'late-five',
      name: 'V on the last beat',
      source: COMMON_PRACTICE,
      bars: '| I7 | I7 / / V7 |',
    },
    {
      id: 'one-four-one-five',
      name: 'I–IV–I–V in half bars',
      source: EIGHT_BAR,
      bars: '| I7 IV7 | I7 V7 |',
    },
    {
      id: 'four-diminished',
      name: 'I–IV–♯IV diminished–I–V',
      source: COMMON_PRACTICE,
      bars: '| I7 / IV7 #ivdim7 | I7 V7 |',
    },
    {
      id: 'minor-four',
      name: 'I–I7–IV–iv, a beat each, then I–V',
      source: COMMON_PRACTICE,
      bars: '| I I7 IV iv | I V7 |',
    },
    {
      id: 'flat-six-five',
      name: '♭VI–V in the last bar',
      source: COMMON_PRACTICE,
      bars: '| I7 | bVI7 V7 |',
    },
    {
      id: 'two-five',
      name: 'ii–V in the last bar',
      source: COMMON_PRACTICE,
      bars: '| I7 | ii7 V7 |',
    },
    {
      id: 'one-six-two-five',
      name: 'I–VI–ii–V in half bars',
      source: COMMON_PRACTICE,
      bars: '| I7 VI7 | ii7 V7 |',
    },
    {
      id: 'one-six-two-five-dominants',
      name: 'I–VI–II–V, all dominant',
      source: COMMON_PRACTICE,
      bars: '| I7 VI7 | II7 V7 |',
    },
    {
      id: 'three-six-two-five',
      name: 'iii–VI–ii–V in half bars',
      source: TWELVE_BAR_JAZZ,
      bars: '| iii7 VI7 | ii7 V7 |',
    },
    {
      id: 'rising-diminished',
      name: 'I–♯I diminished–ii–V',
      source: COMMON_PRACTICE,
      bars: '| I7 #idim7 | ii7 V7 |',
    },
    {
      id: 'falling-diminished',
      name: 'I–♭III diminished–ii–V',
      source: COMMON_PRACTICE,
      bars: '| I7 biiidim7 | ii7 V7 |',
    },
    {
      id: 'falling-dominants',
      name: 'I–♭III–II–♭II, all dominant',
      source: TWELVE_BAR_JAZZ,
      bars: '| I7 bIII7 | II7 bII7 |',
    },
    {
      id: 'tritone',
      name: 'I–♭III–♭VI–♭II, all dominant',
      source: MEMORY,
      bars: '| I7 bIII7 | bVI7 bII7 |',
    },
    {
      id: 'minor-five',
      name: 'V in the last bar, minor',
      mode: 'minor',
      source: MAGAZINE,
      bars: '| i7 | V7 |',
    },
    {
      id: 'minor-one-four-one-five',
      name: 'i–iv–i–V in half bars',
      mode: 'minor',
      source: COMMON_PRACTICE,
      bars: '| i7 iv7 | i7 V7 |',
    },
    {
      id: 'minor-flat-six-five',
      name: '♭VI–V in the last bar, minor',
      mode: 'minor',
      source: COMMON_PRACTICE,
      bars: '| i7 | bVI7 V7 |',
    },
    {
      id: 'minor-two-five',
      name: 'ii half-diminished–V in the last bar',
      mode: 'minor',
      source: COMMON_PRACTICE,
      bars: '| i7 | iim7b5 V7 |',
    },
    {
      id: 'minor-one-six-two-five',
      name: 'i–♭VI–ii half-diminished–V in half bars',
      mode: 'minor',
      source: COMMON_PRACTICE,
      bars: '| i7 bVI7 | iim7b5 V7 |',
    },
    {
      id: 'minor-descent',
      name: 'i–♭VII–♭VI–V in half bars',
      mode: 'minor',
      source: COMMON_PRACTICE,
      bars: '| i bVII | bVI V7 |',
    },
  ] as const satisfies readonly ClosingRow[])();

/** Id of a turnaround of the catalogue. */
export type TurnaroundId = (typeof ROWS)[number]['id'];

/**
 * Turnarounds: the last two bars of a chorus, as chords that lead into the next.
 *
 * @example
 * ```ts
 * import { TURNAROUNDS } from '@reedplate/form';
 *
 * TURNAROUNDS.filter(({ mode }) => mode === 'minor')[0]?.id; // => 'minor-five'
 * ```
 */
export const TURNAROUNDS: readonly ClosingBars[] = /* @__PURE__ */ readClosingRows(ROWS);

/**
 * The form with a turnaround of the catalogue, of its own mode, for its last two bars.
 *
 * @throws ReedplateError `OPTION_UNKNOWN` for a turnaround that is not there or of the other mode;
 * `FORM_INVALID` for a form of two bars or one
 * @example
 * ```ts
 * import { formatForm, withTurnaround } from '@reedplate/form';
 *
 * const form = withTurnaround('basic', 'one-six-two-five');
 * formatForm(form).split('\n')[2]; // => '| V7  | IV7 | I7 VI7 | ii7 V7 |'
 * withTurnaround('minor', 'one-six-two-five'); // throws OPTION_UNKNOWN
 * ```
 */
export function withTurnaround(
  given: FormLike,
  turnaround: TurnaroundId,
  options: FormByNameOptions = {},
): Form {
  const form = formByName(given, options, 'withTurnaround');
  return closeForm(form, turnaround, TURNAROUNDS);
}

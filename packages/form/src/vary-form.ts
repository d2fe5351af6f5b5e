import { requireOneOf, requireShape } from '@reedplate/pitch';
import { withNinths, withSevenths, withTriads } from './chord-colours.js';
import { withDoubleLength, withHalfLength } from './length.js';
import { withDiminishedPassing, withTwoFive } from './passing-chords.js';
import { withoutQuickChange, withQuickChange } from './quick-change.js';
import { type FormByNameOptions, type FormLike, formByName } from './to-form.js';
import { toMinor } from './to-minor.js';
import type { Form } from './types.js';

/** Names of the variations that need nothing but a form, for {@link varyForm}. */
export const VARIATIONS = Object.freeze([
  'triads',
  'sevenths',
  'ninths',
  'minor',
  'quick-change',
  'no-quick-change',
  'diminished',
  'two-five',
  'double-length',
  'half-length',
] as const);

/** Name of a variation; see {@link VARIATIONS}. */
export type Variation = (typeof VARIATIONS)[number];

const FUNCTIONS: Readonly<Record<Variation, (form: Form) => Form>> = {
  triads: withTriads,
  sevenths: withSevenths,
  ninths: withNinths,
  minor: toMinor,
  'quick-change': withQuickChange,
  'no-quick-change': withoutQuickChange,
  diminished: withDiminishedPassing,
  'two-five': withTwoFive,
  'double-length': withDoubleLength,
  'half-length': withHalfLength,
};

/**
 * The form with variations by name, one after the other: what a command or a menu needs. In a
 * program the functions themselves compose as well.
 *
 * @throws ReedplateError `OPTION_UNKNOWN`, and what each variation throws
 * @example
 * ```ts
 * import { formatForm, parseForm, varyForm } from '@reedplate/form';
 *
 * formatForm(varyForm('basic', ['quick-change', 'minor'])).split('\n')[0]; // => '| i7  | iv7 | i7 | %  |'
 * const mine = parseForm('I | IV | V | I', { id: 'mine' });
 * formatForm(varyForm('mine', ['sevenths'], { known: { forms: [mine] } })); // => '| I7 | IV7 | V7 | I7 |'
 * varyForm('vamp', ['two-five']); // throws FORM_INVALID
 * ```
 */
export function varyForm(
  given: FormLike,
  variations: readonly Variation[],
  options: FormByNameOptions = {},
): Form {
  const form = formByName(given, options, 'varyForm');
  const words = { what: 'a list of variations', code: 'OPTION_UNKNOWN' } as const;
  requireShape({ variations }, { variations: 'list' }, words);
  return variations.reduce(
    (varied, name) => FUNCTIONS[requireOneOf(name, VARIATIONS, { what: 'a variation' })](varied),
    form,
  );
}

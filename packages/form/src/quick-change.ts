import { barOf, barsPerUnit, holdsStep, noPlace, replaceBars } from './bar-shape.js';
import { plainStep } from './quality.js';
import { type FormByNameOptions, type FormLike, formByName } from './to-form.js';
import type { Form, FormBar } from './types.js';
import { withBars } from './vary.js';

const ONE = 1;
const FOUR = 4;

/**
 * The form with IV in bar 2 (bars 3 and 4 of a twenty-four-bar form), the IV that it has later.
 *
 * @throws ReedplateError `FORM_INVALID` for a form that does not begin with two bars of I, or
 * never goes to IV
 * @example
 * ```ts
 * import { formatForm, withQuickChange } from '@reedplate/form';
 *
 * formatForm(withQuickChange('basic')).split('\n')[0]; // => '| I7  | IV7 | I7 | %  |'
 * withQuickChange('vamp'); // throws FORM_INVALID
 * ```
 */
export function withQuickChange(given: FormLike, options: FormByNameOptions = {}): Form {
  const form = formByName(given, options, 'withQuickChange');
  const unit = requireOpening(form);
  if (holdsStep(form, unit, unit, FOUR)) return form;
  return withSecondBar(form, barOf(firstFour(form)));
}

/**
 * The form with bar 2 (bars 3 and 4 of a twenty-four-bar form) like bar 1.
 *
 * @throws ReedplateError `FORM_INVALID` for a form that does not begin with I and then I or IV
 * @example
 * ```ts
 * import { formatForm, withoutQuickChange } from '@reedplate/form';
 *
 * formatForm(withoutQuickChange('quick-change')) === formatForm('basic'); // => true
 * withoutQuickChange('eight-bar-five-second'); // throws FORM_INVALID
 * ```
 */
export function withoutQuickChange(given: FormLike, options: FormByNameOptions = {}): Form {
  const form = formByName(given, options, 'withoutQuickChange');
  const unit = requireOpening(form);
  if (holdsStep(form, unit, unit, ONE)) return form;
  return withSecondBar(form, form.bars[0] as FormBar);
}

function requireOpening(form: Form): number {
  const unit = barsPerUnit(form);
  if (!holdsStep(form, 0, unit, ONE)) throw noPlace(form, 'a form that begins on I', 1);
  const isPlain = holdsStep(form, unit, unit, ONE) || holdsStep(form, unit, unit, FOUR);
  if (isPlain) return unit;
  throw noPlace(form, 'a form with I or IV, and no other chord, in bar 2', unit + 1);
}

function withSecondBar(form: Form, bar: FormBar): Form {
  const unit = barsPerUnit(form);
  const second = Array.from({ length: unit }, () => bar);
  return withBars(form, replaceBars(form.bars, unit, second));
}

function firstFour(form: Form): string {
  for (const { numeral } of form.bars.flat()) {
    if (numeral !== null && plainStep(numeral) === FOUR) return numeral;
  }
  throw noPlace(form, 'a form that goes to IV');
}

import { barOf, barsPerUnit, holdsStep, noPlace, replaceBars, stepAtStart } from './bar-shape.js';
import { coloursOf, withQuality } from './quality.js';
import { type FormByNameOptions, type FormLike, formByName } from './to-form.js';
import type { Form, FormBar } from './types.js';
import { sameBar, withBars } from './vary.js';

const ONE = 1;
const TWO = 2;
const FOUR = 4;
const FIVE = 5;
const PASSING = /* @__PURE__ */ barOf('#ivdim7');

/**
 * The form with ♯IV diminished in the second of two bars of IV that lead to I: bar 6 of twelve.
 *
 * @throws ReedplateError `FORM_INVALID` for a form without such bars
 * @example
 * ```ts
 * import { formatForm, withDiminishedPassing } from '@reedplate/form';
 *
 * const form = withDiminishedPassing('basic');
 * formatForm(form).split('\n')[1]; // => '| IV7 | #ivdim7 | I7 | %  |'
 * withDiminishedPassing('ten-bar').bars[5]?.[0]?.numeral; // => '#ivdim7'
 * withDiminishedPassing('vamp'); // throws FORM_INVALID
 * ```
 */
export function withDiminishedPassing(given: FormLike, options: FormByNameOptions = {}): Form {
  const form = formByName(given, options, 'withDiminishedPassing');
  const unit = barsPerUnit(form);
  const returns = indexesWhere(form, (index) => stepAtStart(form.bars[index]) === ONE);
  const places = returns.filter(
    (index) =>
      holdsStep(form, index - 2 * unit, unit, FOUR) && holdsStep(form, index - unit, unit, FOUR),
  );
  if (places.length === 0 && !returns.some((index) => isPassing(form, index - unit))) {
    throw noPlace(form, 'a form with two bars of IV before I');
  }
  const passing = Array.from({ length: unit }, () => PASSING);
  const replaced = places.reduce<readonly FormBar[]>(
    (bars, index) => replaceBars(bars, index - unit, passing),
    form.bars,
  );
  return withBars(form, replaced);
}

function isPassing({ bars }: Form, index: number): boolean {
  return sameBar(bars[index] ?? [], PASSING);
}

/**
 * The form with ii–V in place of its last V–IV, or of its last two bars of V: bars 9 and 10 of
 * twelve. The ii is half-diminished in a minor form, a triad where V is one and a ninth where V is.
 *
 * @throws ReedplateError `FORM_INVALID` for a form without such bars
 * @example
 * ```ts
 * import { formatForm, withTwoFive } from '@reedplate/form';
 *
 * formatForm(withTwoFive('basic')).split('\n')[2]; // => '| ii7 | V7 | I7 | V7 |'
 * withTwoFive('vamp'); // throws FORM_INVALID
 * ```
 */
export function withTwoFive(given: FormLike, options: FormByNameOptions = {}): Form {
  const form = formByName(given, options, 'withTwoFive');
  const unit = barsPerUnit(form);
  const holds = (index: number, step: number): boolean => holdsStep(form, index, unit, step);
  const hasTwoFive = indexesWhere(form, (at) => holds(at, TWO) && holds(at + unit, FIVE));
  if (hasTwoFive.length > 0) return form;
  const cadence = indexesWhere(
    form,
    (at) => holds(at, FIVE) && (holds(at + unit, FOUR) || holds(at + unit, FIVE)),
  ).at(-1);
  if (cadence === undefined) throw noPlace(form, 'a form with V–IV or two bars of V');
  const five = form.bars[cadence] as FormBar;
  const two = barOf(twoBefore(five, form));
  const bars = [two, five].flatMap((bar) => Array.from({ length: unit }, () => bar));
  return withBars(form, replaceBars(form.bars, cadence, bars));
}

function twoBefore([five]: FormBar, { mode }: Form): string {
  const numeral = five?.numeral ?? 'V';
  const isTriad = coloursOf(numeral).seventh === undefined;
  if (mode === 'minor') return withQuality('ii', isTriad ? 'dim' : 'm7b5');
  if (isTriad) return 'ii';
  return withQuality('ii', /9|11|13/u.test(numeral) ? 'm9' : 'm7');
}

function indexesWhere({ bars }: Form, holds: (index: number) => boolean): readonly number[] {
  return bars.flatMap((_, index) => (holds(index) ? [index] : []));
}

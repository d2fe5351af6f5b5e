import { noPlace } from './bar-shape.js';
import { lowestTerms, sharesOf } from './shares.js';
import { type FormByNameOptions, type FormLike, formByName } from './to-form.js';
import type { Form, FormBar, FormChord } from './types.js';
import { withBars } from './vary.js';

/**
 * The form at double length: each chord lasts twice as many bars, as when a fast tune is counted
 * in double time.
 *
 * @throws ReedplateError `FORM_INVALID` for more than 512 bars
 * @example
 * ```ts
 * import { formatForm, parseForm, withDoubleLength } from '@reedplate/form';
 *
 * formatForm(withDoubleLength(parseForm('I7 | IV7 V7'))); // => '| I7 | % | IV7 | V7 |'
 * formatForm(withDoubleLength(parseForm('I7 / / V7'))); // => '| I7 | I7 V7 |'
 * ```
 */
export function withDoubleLength(given: FormLike, options: FormByNameOptions = {}): Form {
  const form = formByName(given, options, 'withDoubleLength');
  return withBars(form, form.bars.flatMap(splitBar));
}

/**
 * The form at half length: each two bars become one. Undoes {@link withDoubleLength}.
 *
 * @throws ReedplateError `FORM_INVALID` for an odd number of bars
 * @example
 * ```ts
 * import { formatForm, parseForm, withHalfLength } from '@reedplate/form';
 *
 * formatForm(withHalfLength(parseForm('I7 | % | IV7 | V7'))); // => '| I7 | IV7 V7 |'
 * withHalfLength(parseForm('I7 | IV7 | V7')); // throws FORM_INVALID
 * ```
 */
export function withHalfLength(given: FormLike, options: FormByNameOptions = {}): Form {
  const form = formByName(given, options, 'withHalfLength');
  const { bars } = form;
  if (bars.length % 2 === 1) throw noPlace(form, 'a form with an even number of bars');
  const pairs = Array.from({ length: bars.length / 2 }, (_, index) =>
    joinBars(bars[2 * index] as FormBar, bars[2 * index + 1] as FormBar),
  );
  return withBars(form, pairs);
}

/** Two bars of a bar: its first half and its second, a chord over the middle in both. */
function splitBar(bar: FormBar): readonly FormBar[] {
  const half = sharesOf(bar);
  const first: FormChord[] = [];
  const second: FormChord[] = [];
  let begin = 0;
  for (const { numeral, weight } of bar) {
    const end = begin + 2 * weight;
    const before = Math.min(end, half) - Math.min(begin, half);
    const after = 2 * weight - before;
    if (before > 0) first.push({ numeral, weight: before });
    if (after > 0) second.push({ numeral, weight: after });
    begin = end;
  }
  return [first, second];
}

function joinBars(first: FormBar, second: FormBar): FormBar {
  const joined = [...scaled(first, sharesOf(second)), ...scaled(second, sharesOf(first))];
  const merged: FormChord[] = [];
  for (const chord of joined) {
    const last = merged.at(-1);
    if (last?.numeral === chord.numeral) {
      merged[merged.length - 1] = { ...last, weight: last.weight + chord.weight };
    } else {
      merged.push(chord);
    }
  }
  return lowestTerms(merged);
}

function scaled(bar: FormBar, factor: number): readonly FormChord[] {
  return bar.map(({ numeral, weight }) => ({ numeral, weight: weight * factor }));
}

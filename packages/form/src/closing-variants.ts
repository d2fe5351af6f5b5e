import { type ClosingBars, closeForm } from './closing-bars.js';
import { ENDINGS } from './endings.js';
import { TURNAROUNDS } from './turnarounds.js';
import type { Form, FormBar } from './types.js';

/** A form with a turnaround or an ending of the catalogue for its last two bars. */
export interface ClosingVariant {
  /** The form it was made of. */
  readonly form: Form;
  /** Id of the turnaround or ending. */
  readonly closing: string;
  readonly bars: Form['bars'];
}

/** Shorter forms are given no other closing: half of them would be of the closing's making. */
const FEWEST_BARS = 8;
const CLOSINGS: readonly ClosingBars[] = /* @__PURE__ */ (() => [...TURNAROUNDS, ...ENDINGS])();

/** All bars that closings are made of. */
export const CLOSING_BARS: readonly FormBar[] = /* @__PURE__ */ CLOSINGS.flatMap(
  ({ bars }) => bars,
);

const textOf = (bars: Form['bars']): string => JSON.stringify(bars);

/**
 * Every form with every closing of its mode, for recognising a form by another of its endings. Of
 * forms that differ in their last two bars only, the first is given the closings; and no variant has
 * the bars of a form, since that form is what they are.
 */
export function closingVariants(
  forms: readonly Form[],
): ReadonlyMap<Form, readonly ClosingVariant[]> {
  const kept = KEPT.get(forms) ?? makeVariants(forms);
  KEPT.set(forms, kept);
  return kept;
}

/**
 * Worked out once for a list of forms: the catalogue has hundreds. Measured: recognising twelve bars takes
 * 0.1 s of processor time, 0.8 s without.
 */
const KEPT = new WeakMap<readonly Form[], ReadonlyMap<Form, readonly ClosingVariant[]>>();

function makeVariants(forms: readonly Form[]): ReadonlyMap<Form, readonly ClosingVariant[]> {
  const known = new Set(forms.map(({ bars }) => textOf(bars)));
  const bodies = new Set<string>();
  const variants = new Map<Form, readonly ClosingVariant[]>();
  for (const form of forms) {
    const body = `${form.mode} ${textOf(form.bars.slice(0, -2))}`;
    if (form.bars.length < FEWEST_BARS || bodies.has(body)) continue;
    bodies.add(body);
    const closed = CLOSINGS.filter(({ mode }) => mode === form.mode)
      .map(({ id }) => ({ form, closing: id, bars: closeForm(form, id, CLOSINGS).bars }))
      .filter(({ bars }) => !known.has(textOf(bars)));
    for (const { bars } of closed) known.add(textOf(bars));
    variants.set(form, closed);
  }
  return variants;
}

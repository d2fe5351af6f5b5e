import { makeForm } from './make-form.js';
import type { Form, FormBar } from './types.js';

const VARIED = ', varied';

/**
 * The form with other bars and all else alone, save that its source no longer vouches for it.
 * Where the bars are the same it is the form itself, so that a variation applied twice is the
 * variation applied once.
 */
export function withBars(form: Form, bars: readonly FormBar[]): Form {
  if (sameBars(form.bars, bars)) return form;
  const source = form.source.endsWith(VARIED) ? form.source : `${form.source}${VARIED}`;
  const { id, name, description, metre, feel, use } = form;
  return makeForm(bars, { id, name, description, metre, feel, use, source });
}

/** The form with every chord changed by a rule; breaks stay. */
export function mapChords(form: Form, change: (numeral: string) => string): Form {
  const bars = form.bars.map((bar) =>
    bar.map(({ numeral, weight }) => ({
      numeral: numeral === null ? null : change(numeral),
      weight,
    })),
  );
  return withBars(form, bars);
}

/** Whether two runs of bars hold the same chords for the same shares. */
export function sameBars(some: readonly FormBar[], others: readonly FormBar[]): boolean {
  return (
    some.length === others.length && some.every((bar, index) => sameBar(bar, others[index] ?? []))
  );
}

/** Whether two bars hold the same chords for the same shares. */
export function sameBar(one: FormBar, other: FormBar): boolean {
  return (
    one.length === other.length &&
    one.every(
      ({ numeral, weight }, at) => numeral === other[at]?.numeral && weight === other[at]?.weight,
    )
  );
}

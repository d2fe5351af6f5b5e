import { ReedplateError } from '@reedplate/pitch';
import { plainStep } from './quality.js';
import type { Form, FormBar } from './types.js';

/** Bars of a form that stand for one of the twelve: two in a twenty-four-bar form, else one. */
export function barsPerUnit({ bars }: Form): 1 | 2 {
  return bars.length === 24 ? 2 : 1;
}

/** The plain degree that a bar holds throughout; undefined where it changes or holds another. */
export function stepOfBar(bar: FormBar | undefined): number | undefined {
  const [only, ...more] = bar ?? [];
  if (only === undefined || only.numeral === null || more.length > 0) return undefined;
  return plainStep(only.numeral);
}

/** The plain degree that a bar begins on. */
export function stepAtStart(bar: FormBar | undefined): number | undefined {
  const numeral = bar?.[0]?.numeral ?? null;
  return numeral === null ? undefined : plainStep(numeral);
}

/** Whether `count` bars from `index` (counted from 0) all hold one degree throughout. */
export function holdsStep({ bars }: Form, index: number, count: number, step: number): boolean {
  const held = bars.slice(Math.max(0, index), index + count);
  return index >= 0 && held.length === count && held.every((bar) => stepOfBar(bar) === step);
}

/** The form's bars with some of them, from `index` (counted from 0) on, put in place of others. */
export function replaceBars(
  bars: readonly FormBar[],
  index: number,
  replacement: readonly FormBar[],
): readonly FormBar[] {
  return [...bars.slice(0, index), ...replacement, ...bars.slice(index + replacement.length)];
}

/** A bar of one chord. */
export function barOf(numeral: string): FormBar {
  return [{ numeral, weight: 1 }];
}

/** The error of a variation that has no place in a form. */
export function noPlace(form: Form, expected: string, bar?: number): ReedplateError {
  return new ReedplateError({
    code: 'FORM_INVALID',
    value: form.id,
    expected,
    ...(bar === undefined ? {} : { where: { bar } }),
  });
}

import type { BarDifference } from '@reedplate/form';

const KINDS: Readonly<Record<BarDifference['kind'], string>> = {
  root: 'another chord',
  quality: 'another kind of chord',
  extra: 'a bar too many',
  missing: 'a bar left out',
};

/** Where bars leave a form, as a row of a table: bar, what was played, what the form has, and what that is. */
export function sayDifference(
  difference: BarDifference,
): readonly [string, string, string, string] {
  const { bar, barOfForm, given, expected, kind } = difference;
  return [`${bar ?? `(${barOfForm})`}`, given ?? '(none)', expected ?? '(none)', KINDS[kind]];
}

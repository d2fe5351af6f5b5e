import type { Compare } from './tonal-names.js';

// The same work as targetsOf on note names with tonal.

/** A tone of a chord among the soundings of a harp. */
export interface NamedTarget {
  readonly name: string;
  readonly interval: string;
  readonly hole: number;
}

/** The targets of a chord among soundings by name; extensions are tones too. */
export function namedTargets(
  symbol: string,
  soundings: readonly { readonly name: string; readonly hole: number }[],
  compare: Compare,
): readonly NamedTarget[] {
  const found: NamedTarget[] = [];
  for (const { name, hole } of soundings) {
    const known = compare(symbol, name);
    if (known.interval === null) continue;
    found.push(Object.freeze({ name: known.name, interval: known.interval, hole }));
  }
  return Object.freeze(found);
}

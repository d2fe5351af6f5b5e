import { barDistance, type ComparedBar, comparedBar } from './bar-distance.js';
import type { FormBar } from './types.js';

/** Bars that recur are compared once: the different ones, and where each stands. */
export interface BarTable {
  /** Place in {@link BarTable.bars} of each bar that was added, by what it holds. */
  readonly places: Map<string, number>;
  readonly bars: ComparedBar[];
}

/** A table without bars. */
export function barTable(): BarTable {
  return { places: new Map(), bars: [] };
}

/** Adds bars to a table and says where each of them stands in it. */
export function addBars(table: BarTable, bars: readonly FormBar[]): readonly number[] {
  return bars.map((bar) => {
    const text = textOf(bar);
    const known = table.places.get(text);
    if (known !== undefined) return known;
    table.places.set(text, table.bars.length);
    return table.bars.push(comparedBar(bar)) - 1;
  });
}

const textOf = (bar: FormBar): string =>
  bar.map(({ numeral, weight }) => `${numeral}*${weight}`).join(' ');

/** Distances of all bars of one table to all bars of another, whose roots are raised by `tonic`. */
export function distancesBetween(
  given: BarTable,
  expected: BarTable,
  tonic: number,
): readonly Float64Array[] {
  return given.bars.map((bar) =>
    Float64Array.from(expected.bars, (other) => barDistance(bar, other, tonic)),
  );
}

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
    return table.bars.push(keptBar(bar)) - 1;
  });
}

/** Bars of the catalogue are compared again and again, and never change. */
const TEXTS = new WeakMap<FormBar, string>();

function textOf(bar: FormBar): string {
  const known = TEXTS.get(bar);
  if (known !== undefined) return known;
  const text = bar.map(({ numeral, weight }) => `${numeral}*${weight}`).join(' ');
  TEXTS.set(bar, text);
  return text;
}

const COMPARED = new WeakMap<FormBar, ComparedBar>();

function keptBar(bar: FormBar): ComparedBar {
  const compared = COMPARED.get(bar) ?? comparedBar(bar);
  COMPARED.set(bar, compared);
  return compared;
}

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

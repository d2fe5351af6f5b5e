import { itemAt } from '@reedplate/pitch';
import { RECOGNITION_WEIGHTS } from './recognition-weights.js';

/** What each given bar costs beside each bar of a form: one row a given bar, a column a bar of the form. */
export interface BarCosts {
  readonly costs: Float64Array;
  readonly given: number;
  readonly barsOfForm: number;
}

/** A given bar set beside a bar of the choruses, both counted from 0; null where there is none. */
export interface BarPair {
  readonly given: number | null;
  readonly expected: number | null;
  readonly cost: number;
}

const GAP = RECOGNITION_WEIGHTS.gap;

/**
 * The least cost of setting the given bars beside so many choruses of the form, in order, where
 * either may have bars that the other has not. Only two rows are kept at a time.
 *
 * @param limit what costs more is not wanted and comes back as infinity, without being finished
 */
export function alignmentCost(bars: BarCosts, choruses: number, limit: number): number {
  let above = firstRow(bars, choruses);
  let row = new Float64Array(above.length);
  for (let given = 0; given < bars.given; given += 1) {
    const least = fillRow(row, above, costsOf(bars, given));
    if (least > limit) return Number.POSITIVE_INFINITY;
    [above, row] = [row, above];
  }
  return itemAt(above, -1);
}

function firstRow({ barsOfForm }: BarCosts, choruses: number): Float64Array<ArrayBuffer> {
  return new Float64Array(barsOfForm * choruses + 1).map((_, at) => at * GAP);
}

function costsOf({ costs, barsOfForm }: BarCosts, given: number): Float64Array {
  return costs.subarray(given * barsOfForm, (given + 1) * barsOfForm);
}

/**
 * Each cell: the bars together, or a gap on one side, whichever is least so far. Every alignment
 * goes through the row, so none can cost less than its least cell, which is returned.
 */
function fillRow(row: Float64Array, above: Float64Array, costs: Float64Array): number {
  let least = (above[0] as number) + GAP;
  row[0] = least;
  let bar = 0;
  for (let at = 1; at < row.length; at += 1) {
    const together = (above[at - 1] as number) + (costs[bar] as number);
    const apart = Math.min(above[at] as number, row[at - 1] as number) + GAP;
    const cost = Math.min(together, apart);
    row[at] = cost;
    if (cost < least) least = cost;
    bar = bar + 1 === costs.length ? 0 : bar + 1;
  }
  return least;
}

/** The pairs of one alignment of least cost, in order; bars go together where that costs no more. */
export function alignBars(bars: BarCosts, choruses: number): readonly BarPair[] {
  const rows = [firstRow(bars, choruses)];
  for (let given = 0; given < bars.given; given += 1) {
    const row = new Float64Array(bars.barsOfForm * choruses + 1);
    fillRow(row, rows[given] as Float64Array, costsOf(bars, given));
    rows.push(row);
  }
  const pairs: BarPair[] = [];
  let [given, expected] = [bars.given, bars.barsOfForm * choruses];
  while (given > 0 || expected > 0) {
    const pair = lastPair(bars, rows, given, expected);
    pairs.push(pair);
    if (pair.given !== null) given -= 1;
    if (pair.expected !== null) expected -= 1;
  }
  return pairs.reverse();
}

/** How the cell after so many given and expected bars was reached. */
function lastPair(
  bars: BarCosts,
  rows: readonly Float64Array[],
  given: number,
  expected: number,
): BarPair {
  const cost = itemAt(itemAt(rows, given), expected);
  if (given > 0 && expected > 0) {
    const together = itemAt(costsOf(bars, given - 1), (expected - 1) % bars.barsOfForm);
    if (cost === itemAt(itemAt(rows, given - 1), expected - 1) + together) {
      return { given: given - 1, expected: expected - 1, cost: together };
    }
  }
  if (given > 0 && cost === itemAt(itemAt(rows, given - 1), expected) + GAP) {
    return { given: given - 1, expected: null, cost: GAP };
  }
  return { given: null, expected: expected - 1, cost: GAP };
}

import type { StudySummary } from '@reedplate/study';

/** A cell of a summary as one flat record, for CSV; null where no tune can be played whole. */
export type SummaryRow = Readonly<Record<string, string | number | null>>;

/**
 * A summary as flat records, one a cell, in the order of a CSV file's columns.
 */
export function summaryRows({ cells }: StudySummary): readonly SummaryRow[] {
  return cells.map(({ tuning, position, level, tunes, ...intervals }) => ({
    tuning,
    position,
    level,
    tunes,
    ...Object.fromEntries(
      Object.entries(intervals).flatMap(([name, interval]) => [
        [name, interval?.value ?? null],
        [`${name}Low`, interval?.low ?? null],
        [`${name}High`, interval?.high ?? null],
      ]),
    ),
  }));
}

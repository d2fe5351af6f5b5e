import {
  type StudyCellSummary,
  type StudyFailure,
  type StudyResult,
  type StudySummaryOptions,
  summariseStudy,
} from '@reedplate/study';

/** What `reedplate summary --json` prints. */
export interface SummaryReport {
  /** Id of the effort model. */
  readonly model: string;
  /** Tunes that were studied, and those that could not be read. */
  readonly tunes: number;
  readonly failures: number;
  /** By tuning, then position, then level. */
  readonly cells: readonly StudyCellSummary[];
}

/**
 * The results of a study summed up, tunes that could not be read counted apart.
 *
 * @param results in any order, each used once and not kept
 * @throws ReedplateError as `summariseStudy`
 */
export function summaryReport(
  results: Iterable<StudyResult | StudyFailure>,
  options: StudySummaryOptions = {},
): SummaryReport {
  let model: string | undefined;
  let tunes = 0;
  let failures = 0;
  function* studied(): Generator<StudyResult> {
    for (const result of results) {
      if ('error' in result) {
        failures += 1;
        continue;
      }
      model ??= result.model;
      tunes += 1;
      yield result;
    }
  }
  const cells = summariseStudy(studied(), options);
  return { model: model ?? '', tunes, failures, cells };
}

/** A cell of a summary as one flat record, for CSV; null where no tune can be played whole. */
export type SummaryRow = Readonly<Record<string, string | number | null>>;

/**
 * A summary as flat records, one a cell, in the order of a CSV file's columns.
 *
 */
export function summaryRows({ cells }: SummaryReport): readonly SummaryRow[] {
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

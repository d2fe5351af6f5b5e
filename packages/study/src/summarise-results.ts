import { deepFreeze, type OptionNames, ReedplateError, requireOptions } from '@reedplate/pitch';
import { requireWhole } from './require-whole.js';
import type { StudyFailure, StudyResult, StudyTempoSource } from './study.js';
import {
  type StudyCellSummary,
  type StudySummaryOptions,
  SUMMARY_OPTIONS,
  summariseStudy,
} from './study-summary.js';

/** The results of a study summed up, tunes that could not be read counted apart. */
export interface StudySummary {
  /** Id of the effort model; empty where no tune could be read. */
  readonly model: string;
  /** Digest of the setup that all results share. */
  readonly digest: string;
  /** How many tunes gave their own tempo, were studied at that of the setup, or at the default. */
  readonly tempos: Readonly<Record<StudyTempoSource, number>>;
  /** Tunes that were studied, and those that could not be read. */
  readonly tunes: number;
  readonly failures: number;
  /** By tuning, then position, then level. */
  readonly cells: readonly StudyCellSummary[];
}

/** How {@link summariseResults} sums up. */
export interface SummariseResultsOptions extends StudySummaryOptions {
  /** Sums up what is there though tunes are missing, such as one part of several; default false. */
  readonly partial?: boolean;
}

const OPTIONS: OptionNames<SummariseResultsOptions> = { ...SUMMARY_OPTIONS, partial: true };

/**
 * The results of a study summed up, tunes that could not be read counted apart.
 *
 * @param results in any order, each used once
 * @throws ReedplateError as `summariseStudy`; `STUDY_INVALID` where a tune is there twice or one is missing, by its
 *   number
 * @example
 * ```ts
 * import { makeStudySetup, studyTune, summariseResults } from '@reedplate/study';
 *
 * const setup = makeStudySetup({ positions: [1] });
 * const text = '{"key":"C","line":{"notes":[{"start":0,"duration":960,"pitch":64}]}}';
 * const found = [studyTune(text, 1, setup), studyTune('{}', 2, setup)];
 * const { tunes, failures } = summariseResults(found);
 * [tunes, failures]; // => [1, 1]
 * summariseResults([]); // throws STUDY_INVALID
 * ```
 */
export function summariseResults(
  results: Iterable<StudyResult | StudyFailure>,
  options: SummariseResultsOptions = {},
): StudySummary {
  const { partial = false, ...how } = requireOptions(options, OPTIONS, 'summariseResults');
  const studied: StudyResult[] = [];
  const failed: StudyFailure[] = [];
  for (const result of results) {
    if ('error' in result) failed.push(result);
    else studied.push(result);
  }
  const cells = summariseStudy(studied, how);
  const { model, digest } = studied[0] as StudyResult;
  const stranger = failed.find((failure) => failure.digest !== digest);
  if (stranger !== undefined) throw mixed(stranger, digest);
  requireWhole(
    [...studied, ...failed].map(({ number }) => number),
    partial,
  );
  const tempos = temposOf(studied);
  const [tunes, failures] = [studied.length, failed.length];
  return deepFreeze({ model, digest, tempos, tunes, failures, cells });
}

function temposOf(results: readonly StudyResult[]): StudySummary['tempos'] {
  const tempos = { tune: 0, setup: 0, default: 0 };
  for (const { tempo } of results) tempos[tempo.from] += 1;
  return tempos;
}

function mixed({ digest, number }: StudyFailure, expected: string): ReedplateError {
  return new ReedplateError({
    code: 'STUDY_INVALID',
    value: digest,
    expected: `results of one setup (here of digest ${expected})`,
    where: { line: number },
  });
}

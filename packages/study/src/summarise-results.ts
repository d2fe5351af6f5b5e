import { requireOptions } from '@reedplate/pitch';
import type { StudyFailure, StudyResult } from './study.js';
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
  options: StudySummaryOptions = {},
): StudySummary {
  requireOptions(options, SUMMARY_OPTIONS, 'summariseResults');
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
  return Object.freeze({ model: model ?? '', tunes, failures, cells });
}

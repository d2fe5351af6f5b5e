import {
  describeFeedback,
  describeVerdict,
  progressOf,
  type Score,
  type ScoreOptions,
  scoreLine,
  type TakeProgress,
} from '@reedplate/chord-tone';
import type { Chart } from '@reedplate/form';
import type { Harp } from '@reedplate/layout';
import type { Line } from '@reedplate/line';

/** What `reedplate score --json` prints. */
export interface ScoreReport {
  /** Title of the take, or null where it has none. */
  readonly title: string | null;
  readonly form: string;
  readonly key: Chart['key'];
  /** The harp that suggestions are written for, or null where none is given. */
  readonly harp: Harp | null;
  /** What a teacher would say first, in English. */
  readonly verdict: string;
  readonly score: Score;
  /** What to do next, in English: one sentence for each entry of `score.feedback`. */
  readonly remarks: readonly string[];
}

/** What `reedplate score --json` prints of several takes. */
export interface ProgressReport {
  /** In the order in which they were given. */
  readonly takes: readonly ScoreReport[];
  /** What changed from each to the next. */
  readonly progress: readonly TakeProgress[];
}

/**
 * How well a take follows a chart: a verdict, the total, and what to do next, with the reasons.
 *
 * @throws ReedplateError as `scoreLine`
 */
export function scoreReport(take: Line, chart: Chart, options: ScoreOptions = {}): ScoreReport {
  const score = scoreLine(take, chart, options);
  return {
    title: take.title ?? null,
    form: chart.form,
    key: chart.key,
    harp: options.harp ?? null,
    verdict: describeVerdict(score.verdict),
    score,
    remarks: score.feedback.map((remark) => describeFeedback(remark)),
  };
}

/** How several takes get better, in their order. */
export function progressReport(takes: readonly ScoreReport[]): ProgressReport {
  return { takes, progress: progressOf(takes.map(({ score }) => score)) };
}

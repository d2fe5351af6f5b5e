import { describeFeedback, type Score, type ScoreOptions, scoreLine } from '@reedplate/chord-tone';
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
  readonly score: Score;
  /** The reasons for what was marked down, in English: one sentence for each entry of `score.feedback`. */
  readonly remarks: readonly string[];
}

/**
 * How well a take follows a chart: in total, for each bar and each change, with the reasons.
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
    score,
    remarks: score.feedback.map((remark) => describeFeedback(remark)),
  };
}

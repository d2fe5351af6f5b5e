import type { ReedEdit, Tuning } from '@reedplate/layout';
import type { Line } from '@reedplate/line';
import {
  type TuningChange,
  type TuningChanges,
  type TuningChangesOptions,
  tuningChanges,
} from '@reedplate/study';

/** A changed tuning with its place. */
export interface AdaptEntry extends TuningChange {
  /** From 1. */
  readonly rank: number;
  /** As `editTuning` reads it, several apart by commas: `5 draw up 1`. */
  readonly name: string;
}

/** What `reedplate adapt --json` prints. */
export interface AdaptReport extends Omit<TuningChanges, 'changes'> {
  /** Lines of the corpus. */
  readonly lines: number;
  /** Every change, the one that costs least first. */
  readonly changes: readonly AdaptEntry[];
}

/**
 * What every change of one reed, or of two, would do to the effort of a corpus, ranked and named.
 *
 * @throws ReedplateError as `tuningChanges`
 */
export function adaptReport(
  lines: readonly Line[],
  tuning: string | Tuning,
  options: TuningChangesOptions = {},
): AdaptReport {
  const { changes, ...found } = tuningChanges(lines, tuning, options);
  return {
    ...found,
    lines: lines.length,
    changes: changes.map((change, at) => ({
      rank: at + 1,
      name: change.edits.map(nameOfEdit).join(', '),
      ...change,
    })),
  };
}

function nameOfEdit({ hole, breath, by }: ReedEdit): string {
  return `${hole} ${breath} ${by > 0 ? 'up' : 'down'} ${Math.abs(by)}`;
}

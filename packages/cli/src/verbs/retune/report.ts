import {
  type Breath,
  type Harp,
  type Hole,
  nameOnHarp,
  type ReedRemedy,
  type RetuningOptions,
  retuningPlan,
} from '@reedplate/layout';
import type { NoteNameWithOctave } from '@reedplate/pitch';

/** What is to be done to one reed, with its notes by name. */
export interface RetuneStep {
  readonly hole: Hole;
  readonly breath: Breath;
  readonly from: NoteNameWithOctave;
  readonly to: NoteNameWithOctave;
  /** Cents up (positive) or down, to a tenth. */
  readonly cents: number;
  readonly remedy: ReedRemedy;
}

/** What `reedplate retune --json` prints. */
export interface RetuneReport {
  readonly from: Harp;
  readonly to: Harp;
  /** The reeds that change, from hole 1 up, blow before draw. */
  readonly steps: readonly RetuneStep[];
  /** How many reeds stay as they are. */
  readonly left: number;
  /** What to mind at the bench for the work there is. */
  readonly cautions: readonly string[];
}

/**
 * Which reeds to work on, and how far, to turn one harp into another.
 *
 * @throws ReedplateError as `retuningPlan`
 */
export function retuneReport(from: Harp, to: Harp, options: RetuningOptions = {}): RetuneReport {
  const plan = retuningPlan(from, to, options);
  const worked = plan.steps.filter(({ remedy }) => remedy !== 'leave');
  return {
    from,
    to,
    steps: worked.map((step) => ({
      hole: step.hole,
      breath: step.breath,
      from: nameOnHarp(from, step.from),
      to: nameOnHarp(to, step.to),
      cents: Math.round(step.cents * 10) / 10,
      remedy: step.remedy,
    })),
    left: plan.steps.length - worked.length,
    cautions: plan.cautions,
  };
}

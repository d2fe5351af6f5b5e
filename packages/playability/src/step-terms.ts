import { airTerm } from './air.js';
import type { Choice } from './choice.js';
import { type Figures, inPoints } from './figures.js';
import {
  bendMoveTerm,
  breathTerm,
  chordTerm,
  EFFORT_TERMS,
  type EffortTerm,
  holdTerm,
  hurryTerm,
  reachTerm,
  repeatTerm,
  techniqueTerm,
  timeNeeded,
} from './terms.js';

/** Effort by term, in points; terms that cost nothing are left out. */
export type TermEfforts = { readonly [Term in EffortTerm]?: number };

/** A step of a path as its terms see it. */
export interface TermStep {
  /** Null at the beginning of a line. */
  readonly from: Choice | null;
  readonly to: Choice;
  /** Seconds held, and seconds from the onset before. */
  readonly held: number;
  readonly since: number;
  /** Air steps before it, after any rest, and air steps moved. */
  readonly air: number;
  readonly move: number;
}

/** What a step costs, term by term, in thousandths. */
export function termsOfStep(step: TermStep, figures: Figures): Record<EffortTerm, number> {
  const { from, to, held, since, air, move } = step;
  return {
    technique: techniqueTerm(to, figures),
    chord: chordTerm(to, figures),
    hold: holdTerm(to, held, figures),
    reach: from === null ? 0 : reachTerm(from, to, figures),
    breath: from === null ? 0 : breathTerm(from, to, figures),
    bendMove: bendMoveTerm(from, to, figures),
    repeat: from === null ? 0 : repeatTerm(from, to, figures),
    hurry: from === null ? 0 : hurryTerm(timeNeeded(from, to, figures), since, figures),
    air: airTerm(air, move, figures),
  };
}

/** The sums of terms over steps, in points. */
export function sumTerms(steps: readonly Readonly<Record<EffortTerm, number>>[]): TermEfforts {
  const sums = EFFORT_TERMS.map((term): [EffortTerm, number] => {
    const thousandths = steps.reduce((sum, terms) => sum + terms[term], 0);
    return [term, inPoints(thousandths)];
  });
  return Object.freeze(Object.fromEntries(sums.filter(([, effort]) => effort !== 0)));
}

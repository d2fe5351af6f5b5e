import type { Sounding } from '@reedplate/layout';
import { makeChoice } from './choice.js';
import type { EffortModel } from './effort-model.js';
import { figuresOf, inPoints } from './figures.js';
import {
  bendMoveTerm,
  breathTerm,
  hurryTerm,
  reachTerm,
  repeatTerm,
  techniqueTerm,
  timeNeeded,
} from './terms.js';

/** Effort in points of going from one single note to another in some seconds, and of sounding it. */
export type MoveEffort = (from: Sounding | null, to: Sounding, seconds: number) => number;

/**
 * What moves cost under a model, one by one: all terms but those that a whole line has, holding a
 * bend and the air. For rooms above that choose soundings themselves.
 *
 * @internal
 */
export function moveEffort(model: EffortModel): MoveEffort {
  const figures = figuresOf(model);
  return (from, to, seconds) => {
    const next = makeChoice([to]);
    if (from === null) {
      return inPoints(techniqueTerm(next, figures) + bendMoveTerm(null, next, figures));
    }
    const before = makeChoice([from]);
    return inPoints(
      techniqueTerm(next, figures) +
        reachTerm(before, next, figures) +
        breathTerm(before, next, figures) +
        bendMoveTerm(before, next, figures) +
        repeatTerm(before, next, figures) +
        hurryTerm(timeNeeded(before, next, figures), seconds, figures),
    );
  };
}

import { type HarpLike, toHarp } from '@reedplate/layout';
import { barBeatAt, type Line } from '@reedplate/line';
import { requireOptions } from '@reedplate/pitch';
import { afterRest } from './air.js';
import type { Choice, Grip } from './choice.js';
import { eventsOf, type LineEvent } from './line-events.js';
import { STEPS_PER_SECOND, secondsHeld } from './line-times.js';
import { type NotPlayable, notPlayable } from './not-playable.js';
import { type LinePath, PATH_OPTIONS, type PathOptions, pathOf } from './path.js';
import { makeProblem, type Problem, waysAt } from './problem.js';
import { cheapestWay } from './search.js';
import { mildestWay } from './search-worst.js';
import { headOf, type Setting, settingOf } from './setting.js';
import { airAfterStep, stageOf } from './stage.js';
import { sumTerms, type TermEfforts, termsOfStep } from './step-terms.js';
import type { EffortTerm } from './terms.js';
import type { Way } from './way.js';

/**
 * Why an event is sounded as it is: it is the `only-way`; every other way is harder (`easier`); or
 * another is as easy and stands later in order (`first-of-equals`).
 */
export type ChoiceReason = 'only-way' | 'easier' | 'first-of-equals';

/** Another way to sound an event, and the best path through it against the best of all. */
export interface OtherWay {
  readonly soundings: Grip;
  /** Points more in all; from 0 under objective `total`. */
  readonly more: number;
  /** Points more of the worst step; from 0 under objective `worst`. */
  readonly worstMore: number;
}

/** An event of a path, explained. */
export interface ExplainedStep {
  readonly bar: number;
  readonly beat: number;
  /** First tick, and ticks held. */
  readonly start: number;
  readonly duration: number;
  readonly soundings: Grip;
  /** Points. */
  readonly effort: number;
  readonly terms: TermEfforts;
  /** Air after it, in seconds of single-note playing from half full: above 0 drawn in. */
  readonly air: number;
  readonly reason: ChoiceReason;
  /** The other ways to sound it, the nearest to the best first. */
  readonly others: readonly OtherWay[];
}

/** A best path with its effort taken apart, by term and by event. */
export interface PathExplanation {
  readonly playable: true;
  readonly path: LinePath;
  /** Effort of the whole path by term. */
  readonly terms: TermEfforts;
  readonly steps: readonly ExplainedStep[];
}

/**
 * The best path of a line with its effort taken apart: by term, by event, and for each event
 * what every other way of sounding it would cost more, the rest played as well as can be.
 *
 * @throws ReedplateError as `bestPath`
 * @example
 * ```ts
 * import { makeLine } from '@reedplate/line';
 * import { explainPath } from '@reedplate/playability';
 *
 * const line = makeLine([
 *   { start: 0, duration: 960, pitch: 67 },
 *   { start: 960, duration: 960, pitch: 72 },
 * ]);
 * const found = explainPath(line, 'C');
 * if (!found.playable) throw new Error('not playable');
 * found.terms; // => { reach: 1 }
 * found.steps[0]?.reason; // => 'easier'
 * found.steps[0]?.others[0]?.more; // => 1.4
 * ```
 */
export function explainPath(
  line: Line,
  given: HarpLike,
  options: PathOptions = {},
): PathExplanation | NotPlayable {
  const setting = settingOf(requireOptions(options, PATH_OPTIONS, 'explainPath'));
  const harp = toHarp(given, options.known);
  const problem = makeProblem(line, harp, setting.model, setting);
  const way = searchFor(setting)(problem);
  if (way === undefined) return notPlayable(line, harp, setting, problem);
  const path = pathOf(problem, way, headOf(harp, setting));
  const terms = termsOf(problem, way);
  const steps = eventsOf(line).map((event, at): ExplainedStep => {
    const others = othersAt(at, problem, path, setting);
    const step = terms[at] as StepTerms;
    return Object.freeze({
      ...placeOf(event, line),
      soundings: path.soundings[at] as Grip,
      effort: Object.values(step.terms).reduce((sum, cost) => sum + cost, 0) / 1000,
      terms: sumTerms([step.terms]),
      air: step.air / STEPS_PER_SECOND,
      reason: reasonFor(others, setting),
      others,
    });
  });
  const sums = sumTerms(terms.map((step) => step.terms));
  return Object.freeze({ playable: true, path, terms: sums, steps: Object.freeze(steps) });
}

const searchFor = ({ objective }: Setting) => (objective === 'total' ? cheapestWay : mildestWay);

function placeOf({ start, end }: LineEvent, line: Line) {
  return { ...barBeatAt(start, line), start, duration: end - start };
}

interface StepTerms {
  readonly terms: Readonly<Record<EffortTerm, number>>;
  /** Air steps after it. */
  readonly air: number;
}

function termsOf(problem: Problem, { choices }: Way): readonly StepTerms[] {
  const { times, board } = problem;
  let from: Choice | null = null;
  let before = 0;
  return choices.map((choice, event) => {
    const stage = stageOf(problem, event, choice);
    const to = board.choices[choice] as Choice;
    const terms = termsOfStep(
      {
        from,
        to,
        held: secondsHeld(times, event),
        since: stage.since,
        air: afterRest(before, stage.recovered),
        move: stage.move,
      },
      board.figures,
    );
    from = to;
    before = airAfterStep(stage, before);
    return { terms, air: before };
  });
}

function othersAt(
  event: number,
  problem: Problem,
  best: LinePath,
  setting: Setting,
): readonly OtherWay[] {
  const { choices } = problem.board;
  const others = waysAt(problem, event, {})
    .filter((choice) => choices[choice]?.soundings !== best.soundings[event])
    .map((choice): OtherWay => {
      const way = searchFor(setting)(problem, { forced: { event, choice } }) as Way;
      const path = pathOf(problem, way, headOf(best.harp, setting));
      return Object.freeze({
        soundings: path.soundings[event] as Grip,
        more: difference(path.effort, best.effort),
        worstMore: difference(path.worst, best.worst),
      });
    });
  return Object.freeze(others.sort((a, b) => howMuch(a, setting) - howMuch(b, setting)));
}

/** Points apart, exact to the thousandth. */
const difference = (a: number, b: number): number => Math.round((a - b) * 1000) / 1000;

const howMuch = ({ more, worstMore }: OtherWay, { objective }: Setting): number =>
  objective === 'total' ? more : worstMore * WORST_FIRST + more;

/** Makes the worst step outweigh any sum, as objective `worst` has it. */
const WORST_FIRST = 1e9;

function reasonFor([nearest]: readonly OtherWay[], setting: Setting): ChoiceReason {
  if (nearest === undefined) return 'only-way';
  return howMuch(nearest, setting) > 0 ? 'easier' : 'first-of-equals';
}

import type { Harp } from '@reedplate/layout';
import type { Line } from '@reedplate/line';
import { itemAt } from '@reedplate/pitch';
import { type LaidOut, layOut } from './board.js';
import { doSteps, type Steps } from './in-steps.js';
import { type LineTimes, lineTimes, timesWithout } from './line-times.js';
import { type Bound, lowerBound } from './lower-bound.js';
import type { Problem } from './problem.js';
import { cheapestWaySteps } from './search.js';
import type { Setting } from './setting.js';
import type { Way } from './way.js';

/**
 * A line made ready to be tried on many harps.
 *
 * @internal
 */
export interface FitLine {
  readonly times: LineTimes;
  readonly boundOf: (laidOut: LaidOut) => Bound;
}

/**
 * Makes a line ready to be tried on harps.
 *
 * @throws ReedplateError `LINE_EMPTY`, `NUMBER_RANGE`
 *
 * @internal
 */
export function fitLine(line: Line, tempo?: number): FitLine {
  const times = lineTimes(line, tempo);
  return { times, boundOf: lowerBound(times) };
}

/**
 * A line on a harp before any search.
 *
 * @internal
 */
export interface Candidate extends Bound {
  /** Place in the order given. */
  readonly order: number;
  readonly laidOut: LaidOut;
}

/**
 * A candidate with what it was asked for.
 *
 * @internal
 */
export interface HarpCandidate extends Candidate {
  readonly harp: Harp;
  readonly transposition: number;
}

/**
 * A candidate with its cheapest way.
 *
 * @internal
 */
export interface Searched<Of extends Candidate = Candidate> {
  readonly candidate: Of;
  readonly problem: Problem;
  readonly way: Way;
}

/**
 * A line moved by semitones on a harp.
 *
 * @internal
 */
export function candidateOn(
  { times, boundOf }: FitLine,
  harp: Harp,
  semitones: number,
  setting: Setting,
  order: number,
): Candidate {
  const laidOut = layOut(times.sets, harp, setting.model, setting, semitones);
  const { missing, bound } = boundOf(laidOut);
  return { order, laidOut, missing, bound };
}

/**
 * All harps with all transpositions, each with what is known before a search. A step is a harp.
 *
 * @internal
 */
export function* candidatesFor(
  line: FitLine,
  harps: readonly Harp[],
  transpositions: readonly number[],
  setting: Setting,
): Steps<readonly HarpCandidate[]> {
  const shapes = new Map<string, Harp>();
  const candidates: HarpCandidate[] = [];
  for (const [at, harp] of harps.entries()) {
    const name = shapeOf(harp);
    const shape = shapes.get(name) ?? harp;
    shapes.set(name, shape);
    for (const [index, transposition] of transpositions.entries()) {
      const semitones = transposition + lowestReed(shape) - lowestReed(harp);
      const order = at * transpositions.length + index;
      const { laidOut, missing, bound } = candidateOn(line, shape, semitones, setting, order);
      candidates.push({ order, harp, transposition, laidOut, missing, bound });
    }
    yield;
  }
  return candidates;
}

/**
 * The pitch by which harps of one tuning differ.
 *
 * @internal
 */
export const lowestReed = ({ holes }: Harp): number => itemAt(holes, 0).blow;

/** The reeds of a harp apart from its key: harps of one shape share a board of costs. */
function shapeOf(harp: Harp): string {
  const low = lowestReed(harp);
  return harp.holes.map(({ blow, draw }) => `${blow - low} ${draw - low}`).join(' ');
}

/**
 * Finds the cheapest way through what a candidate can sound of a line.
 *
 * @internal
 */
export function searchCandidate<Of extends Candidate>(line: FitLine, candidate: Of): Searched<Of> {
  return doSteps(searchCandidateSteps(line, candidate));
}

/**
 * {@link searchCandidate} in steps.
 *
 * @internal
 */
export function* searchCandidateSteps<Of extends Candidate>(
  { times }: FitLine,
  candidate: Of,
): Steps<Searched<Of>> {
  const { missing, laidOut } = candidate;
  const { ways } = laidOut;
  const part = missing === 0 ? times : timesWithout(times, (set) => ways[set]?.length !== 0);
  const problem = { times: part, ...laidOut };
  if (part.count === 0) return { candidate, problem, way: NONE };
  return { candidate, problem, way: (yield* cheapestWaySteps(problem)) as Way };
}

const NONE: Way = { choices: [], cost: 0, worst: 0 };

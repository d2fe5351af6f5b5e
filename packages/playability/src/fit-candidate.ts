import type { Harp } from '@reedplate/layout';
import { type LaidOut, layOut } from './board.js';
import { type LineTimes, timesWithout } from './line-times.js';
import { lowerBound } from './lower-bound.js';
import type { Problem } from './problem.js';
import { cheapestWay } from './search.js';
import type { Setting } from './setting.js';
import type { Way } from './way.js';

/** A harp and a transposition of the line, before any search. */
export interface Candidate {
  /** Place in the order given. */
  readonly order: number;
  readonly harp: Harp;
  readonly transposition: number;
  readonly laidOut: LaidOut;
  /** Moments that cannot be sounded. */
  readonly missing: number;
  /** Thousandths that no way through the rest costs less than. */
  readonly bound: number;
}

/** A candidate with its cheapest way. */
export interface Searched {
  readonly problem: Problem;
  readonly way: Way;
}

/** All harps with all transpositions, each with what is known before a search. */
export function candidatesFor(
  times: LineTimes,
  harps: readonly Harp[],
  transpositions: readonly number[],
  setting: Setting,
): Candidate[] {
  const shapes = new Map<string, Harp>();
  const boundOf = lowerBound(times);
  return harps.flatMap((harp, at) => {
    const name = shapeOf(harp);
    const shape = shapes.get(name) ?? harp;
    shapes.set(name, shape);
    return transpositions.map((transposition, index): Candidate => {
      const offset = transposition + lowestReed(shape) - lowestReed(harp);
      const laidOut = layOut(moveSets(times.sets, offset), shape, setting.model, setting);
      return {
        order: at * transpositions.length + index,
        harp,
        transposition,
        laidOut,
        ...boundOf(laidOut),
      };
    });
  });
}

const lowestReed = ({ holes }: Harp): number => holes[0]?.blow ?? 0;

/** The reeds of a harp apart from its key: harps of one shape share a board of costs. */
function shapeOf(harp: Harp): string {
  const low = lowestReed(harp);
  return harp.holes.map(({ blow, draw }) => `${blow - low} ${draw - low}`).join(' ');
}

function moveSets(
  sets: readonly (readonly number[])[],
  semitones: number,
): readonly (readonly number[])[] {
  return semitones === 0 ? sets : sets.map((set) => set.map((pitch) => pitch + semitones));
}

/** Finds the cheapest way through what a candidate can sound of a line. */
export function searchCandidate(times: LineTimes, { missing, laidOut }: Candidate): Searched {
  const { ways } = laidOut;
  const part = missing === 0 ? times : timesWithout(times, (set) => ways[set]?.length !== 0);
  const problem = { times: part, ...laidOut };
  return { problem, way: part.count === 0 ? NONE : (cheapestWay(problem) as Way) };
}

const NONE: Way = { choices: [], cost: 0, worst: 0 };

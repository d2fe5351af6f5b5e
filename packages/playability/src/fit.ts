import type { Harp } from '@reedplate/layout';
import type { Line } from '@reedplate/line';
import { requireInteger, requireSome } from '@reedplate/pitch';
import { inPoints } from './figures.js';
import { type Candidate, candidatesFor, type Searched, searchCandidate } from './fit-candidate.js';
import { lineTimes } from './line-times.js';
import type { PathOptions } from './path.js';
import { type PathProfile, profileOf } from './profile.js';
import { settingOf } from './setting.js';

/** How well a harp suits a line: how much of it can be played, with what effort and technique. */
export interface HarpFit extends PathProfile {
  readonly harp: Harp;
  /** Semitones the line is moved up; negative down. */
  readonly transposition: number;
  /** Share of the line's moments that can be sounded, 0 to 1. */
  readonly playableShare: number;
  /** Moments that cannot be sounded, and are left out. */
  readonly missing: number;
  /** Least effort of what can be played, in points. */
  readonly effort: number;
  /** The same by moment played; 0 where none is. */
  readonly effortPerMoment: number;
}

/** A ranking of harps for a line. */
export interface Fit {
  /** Id of the effort model. */
  readonly model: string;
  readonly level: string;
  /** Moments of the line. */
  readonly moments: number;
  /** The best, the very best first. */
  readonly harps: readonly HarpFit[];
  /** Harps and transpositions asked about. */
  readonly considered: number;
  /** Of these, how many needed a search; the rest are proven to be no better than the last. */
  readonly searched: number;
}

/** What {@link fit} goes by. */
export interface FitOptions extends Omit<PathOptions, 'objective'> {
  /** Semitones by which the line may be moved; default none but 0. */
  readonly transpositions?: readonly number[];
  /** How many harps to rank, from 1; default 10. */
  readonly count?: number;
}

/**
 * The harps that suit a line, the best first: by how much of it they play, then by least effort,
 * then by the order given. Exact: a harp is passed over only if a lower bound of its effort (the
 * least that each note and each pair of neighbours can cost) is above what the last one ranked
 * costs.
 *
 * @param harps any harps, such as those of `everyHarp`
 * @throws ReedplateError as `bestPath`, `NUMBER_RANGE` for the count or a transposition, and
 *   `LIST_EMPTY` without a harp or a transposition
 * @example
 * ```ts
 * import { makeLine } from '@reedplate/line';
 * import { everyHarp, fit } from '@reedplate/playability';
 *
 * const scale = [67, 69, 71, 72, 74, 76, 78, 79];
 * const line = makeLine(scale.map((pitch, at) => ({ start: at * 480, duration: 480, pitch })));
 * const { harps, considered } = fit(line, everyHarp(), { count: 1 });
 * considered; // => 12
 * harps[0]?.harp.key; // => 'G'
 * fit(line, everyHarp(), { count: 0 }); // throws NUMBER_RANGE
 * fit(line, []); // throws LIST_EMPTY
 * ```
 */
export function fit(line: Line, harps: readonly Harp[], options: FitOptions = {}): Fit {
  const { transpositions = [0], count = 10, ...rest } = options;
  requireInteger(count, { min: 1, what: 'a number of harps' });
  requireSome(harps, 'one harp');
  requireSome(transpositions, 'one transposition');
  for (const semitones of transpositions) {
    requireInteger(semitones, { min: -127, max: 127, what: 'semitones' });
  }
  const setting = settingOf(rest);
  const times = lineTimes(line, setting.tempo);
  const candidates = candidatesFor(times, harps, transpositions, setting).sort(byPromise);
  const best: Ranked[] = [];
  let searched = 0;
  for (const candidate of candidates) {
    if (isBeaten(candidate, best[count - 1])) break;
    searched += 1;
    best.push({ candidate, ...searchCandidate(times, candidate) });
    best.sort(inRank);
    best.splice(count);
  }
  return Object.freeze({
    model: setting.model.id,
    level: setting.level,
    moments: times.count,
    harps: Object.freeze(best.map((ranked) => fitOf(ranked, times.count))),
    considered: candidates.length,
    searched,
  });
}

interface Ranked extends Searched {
  readonly candidate: Candidate;
}

function byPromise(a: Candidate, b: Candidate): number {
  return a.missing - b.missing || a.bound - b.bound || a.order - b.order;
}

/** Candidates come by promise, so where one is beaten all that follow are. */
function isBeaten({ missing, bound }: Candidate, last: Ranked | undefined): boolean {
  if (last === undefined) return false;
  const more = missing - last.candidate.missing;
  return more > 0 || (more === 0 && bound > last.way.cost);
}

function inRank(a: Ranked, b: Ranked): number {
  return (
    a.candidate.missing - b.candidate.missing ||
    a.way.cost - b.way.cost ||
    a.candidate.order - b.candidate.order
  );
}

function fitOf({ candidate, problem, way }: Ranked, moments: number): HarpFit {
  const { harp, transposition, missing } = candidate;
  const effort = inPoints(way.cost);
  const played = moments - missing;
  return Object.freeze({
    harp,
    transposition,
    playableShare: played / moments,
    missing,
    effort,
    effortPerMoment: played === 0 ? 0 : effort / played,
    ...profileOf(problem, way),
  });
}

import { type Harp, type HarpLike, type PlayerLike, toHarp } from '@reedplate/layout';
import type { Line } from '@reedplate/line';
import { type OptionNames, requireInteger, requireOptions, requireSome } from '@reedplate/pitch';
import { inPoints } from './figures.js';
import { candidatesFor, fitLine, type HarpCandidate, type Searched } from './fit-candidate.js';
import { doSteps, doStepsInTurn, type Steps, type StopSignal } from './in-steps.js';
import { PATH_OPTIONS, type PathOptions } from './path.js';
import { type PathProfile, profileOf } from './profile.js';
import { rankCandidates } from './rank.js';
import { settingOf } from './setting.js';

/** How well a harp suits a line: how much of it can be played, with what effort and technique. */
export interface HarpFit extends PathProfile {
  readonly harp: Harp;
  /** Semitones the line is moved up; negative down. */
  readonly transposition: number;
  /** Share of the line's events that can be sounded, 0 to 1. */
  readonly playableShare: number;
  /** Events that cannot be sounded, and are left out. */
  readonly missing: number;
  /** Least effort of what can be played, in points. */
  readonly effort: number;
  /** The same by event played; 0 where none is. */
  readonly effortPerEvent: number;
}

/** A ranking of harps for a line. */
export interface FitRanking {
  /** Id of the effort model. */
  readonly model: string;
  /** Who plays, as given. */
  readonly level: PlayerLike;
  /** Events of the line. */
  readonly events: number;
  /** The best, the very best first. */
  readonly harps: readonly HarpFit[];
  /** Harps and transpositions asked about. */
  readonly considered: number;
  /** Of these, how many needed a search; the rest are proven to be no better than the last. */
  readonly searched: number;
}

/** What {@link fitHarps} goes by. */
export interface FitHarpsOptions extends Omit<PathOptions, 'objective'> {
  /** Semitones by which the line may be moved; default none but 0. */
  readonly transpositions?: readonly number[];
  /** How many harps to rank, from 1; default 10. */
  readonly count?: number;
}

const { objective: _, ...SETTING_OPTIONS } = PATH_OPTIONS;
const FIT_OPTIONS: OptionNames<FitHarpsOptions> = {
  ...SETTING_OPTIONS,
  transpositions: true,
  count: true,
};

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
 * import { everyHarp, fitHarps } from '@reedplate/playability';
 *
 * const scale = [67, 69, 71, 72, 74, 76, 78, 79];
 * const line = makeLine(scale.map((pitch, at) => ({ start: at * 480, duration: 480, pitch })));
 * const { harps, considered } = fitHarps(line, everyHarp(), { count: 1 });
 * considered; // => 12
 * harps[0]?.harp.key; // => 'G'
 * fitHarps(line, everyHarp(), { count: 0 }); // throws NUMBER_RANGE
 * fitHarps(line, []); // throws LIST_EMPTY
 * ```
 */
export function fitHarps(
  line: Line,
  harps: readonly HarpLike[],
  options: FitHarpsOptions = {},
): FitRanking {
  return doSteps(fitSteps(line, harps, requireOptions(options, FIT_OPTIONS, 'fitHarps')));
}

/** How {@link fitHarpsAsync} goes about it. */
export interface FitHarpsAsyncOptions extends FitHarpsOptions {
  /** Ends the call when it is aborted. */
  readonly signal?: StopSignal;
}

const FIT_ASYNC_OPTIONS: OptionNames<FitHarpsAsyncOptions> = { ...FIT_OPTIONS, signal: true };

/**
 * What {@link fitHarps} gives, worked out in stretches of some milliseconds with other work in between: a
 * page stays alive, and a signal ends it between one harp and the next.
 *
 * @throws ReedplateError as {@link fitHarps}; the reason of the signal where it is aborted
 * @example
 * ```ts
 * import { makeLine } from '@reedplate/line';
 * import { everyHarp, fitHarpsAsync } from '@reedplate/playability';
 *
 * const line = makeLine([{ start: 0, duration: 960, pitch: 67 }]);
 * const signal = AbortSignal.timeout(2000);
 * const { harps } = await fitHarpsAsync(line, everyHarp(), { signal, count: 1 });
 * harps[0]?.harp.key; // => 'C'
 * ```
 */
export async function fitHarpsAsync(
  line: Line,
  harps: readonly HarpLike[],
  options: FitHarpsAsyncOptions = {},
): Promise<FitRanking> {
  const { signal, ...rest } = requireOptions(options, FIT_ASYNC_OPTIONS, 'fitHarpsAsync');
  return doStepsInTurn(fitSteps(line, harps, rest), signal);
}

function* fitSteps(
  line: Line,
  harps: readonly HarpLike[],
  { transpositions = [0], count = 10, ...rest }: FitHarpsOptions,
): Steps<FitRanking> {
  requireInteger(count, { min: 1, what: 'a number of harps' });
  const asked = requireSome(harps, 'one harp').map((harp) => toHarp(harp, rest.known));
  requireSome(transpositions, 'one transposition');
  for (const semitones of transpositions) {
    requireInteger(semitones, { min: -127, max: 127, what: 'semitones' });
  }
  const setting = settingOf(rest);
  const prepared = fitLine(line, setting.tempo);
  yield;
  const candidates = yield* candidatesFor(prepared, asked, transpositions, setting);
  const { best, searched } = yield* rankCandidates(prepared, candidates, count);
  const { count: events } = prepared.times;
  const fits: HarpFit[] = [];
  for (const found of best) {
    fits.push(fitOf(found, events));
    yield;
  }
  return Object.freeze({
    model: setting.model.id,
    level: setting.level,
    events,
    harps: Object.freeze(fits),
    considered: candidates.length,
    searched,
  });
}

function fitOf({ candidate, problem, way }: Searched<HarpCandidate>, events: number): HarpFit {
  const { harp, transposition, missing } = candidate;
  const effort = inPoints(way.cost);
  const played = events - missing;
  return Object.freeze({
    harp,
    transposition,
    playableShare: played / events,
    missing,
    effort,
    effortPerEvent: played === 0 ? 0 : effort / played,
    ...profileOf(problem, way),
  });
}

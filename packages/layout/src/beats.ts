import {
  centsBetween,
  deepFreeze,
  type OptionNames,
  ReedplateError,
  requireOneOf,
  requireOptions,
  requireShape,
} from '@reedplate/pitch';
import {
  makeRatio,
  type NearestRatioOptions,
  nearestRatio,
  type Ratio,
  ratioCents,
  requireWithin,
} from './ratio.js';
import { BREATHS, type Breath } from './sounding.js';
import type { TemperedHarp, TemperedReed } from './temper-harp.js';

/** Two notes sounding together, against a just ratio. */
export interface IntervalIntonation {
  /** The just ratio of the upper to the lower note. */
  readonly ratio: Ratio;
  /** Size of the interval as it is tuned. */
  readonly cents: number;
  /** Cents by which it is wider (positive) or narrower than the ratio. */
  readonly deviation: number;
  /**
   * Beats a second between the lowest partials that the ratio makes coincide: partial `numerator`
   * of the lower note and partial `denominator` of the upper.
   */
  readonly beats: number;
}

/** Against what {@link intervalIntonation} measures. */
export interface IntervalIntonationOptions extends NearestRatioOptions {
  /** Default: the nearest simple ratio, see {@link nearestRatio}. */
  readonly ratio?: Ratio;
}

const INTERVAL_OPTIONS: OptionNames<IntervalIntonationOptions> = { ratio: true, limit: true };

/**
 * How far two notes are from a just ratio, and how fast they beat.
 *
 * @param lower frequency in Hz
 * @param upper frequency in Hz, not below `lower`
 * @throws ReedplateError `NUMBER_RANGE`
 * @example
 * ```ts
 * import { intervalIntonation } from '@reedplate/layout';
 *
 * intervalIntonation(200, 301).ratio; // => { numerator: 3, denominator: 2 }
 * intervalIntonation(200, 301).beats; // => 2
 * intervalIntonation(301, 200); // throws NUMBER_RANGE
 * ```
 */
export function intervalIntonation(
  lower: number,
  upper: number,
  options: IntervalIntonationOptions = {},
): IntervalIntonation {
  const { ratio: given, ...nearest } = requireOptions(
    options,
    INTERVAL_OPTIONS,
    'intervalIntonation',
  );
  requireWithin(lower, Number.MIN_VALUE, 1e5, 'a frequency in Hz');
  requireWithin(upper, lower, 1e5, 'a frequency in Hz not below the other');
  const cents = centsBetween(lower, upper);
  const ratio = given ?? nearestRatio(cents, nearest);
  return deepFreeze({
    ratio,
    cents,
    deviation: cents - ratioCents(ratio),
    beats: Math.abs(ratio.numerator * lower - ratio.denominator * upper),
  });
}

/** A pair of notes of a chord by their places in it, from 0. */
export interface ChordInterval extends IntervalIntonation {
  readonly lower: number;
  readonly upper: number;
}

/** Holes sounding together on one breath. */
export interface ChordIntonation {
  /** From the lowest note up. */
  readonly reeds: readonly TemperedReed[];
  /** Every pair of them. */
  readonly intervals: readonly ChordInterval[];
}

/** Against what {@link chordIntonation} measures. */
export interface ChordIntonationOptions extends NearestRatioOptions {
  /** The whole chord as proportions from its lowest note up, such as `[4, 5, 6, 7]`; default: each pair against its nearest simple ratio. */
  readonly proportions?: readonly number[];
}

const CHORD_OPTIONS: OptionNames<ChordIntonationOptions> = { proportions: true, limit: true };
const TUNED = { what: 'a tuned harp, as temperHarp gives it', code: 'HARP_INVALID' } as const;

/**
 * How just a chord or double stop is: deviation and beats of every pair of its notes.
 *
 * @param holes holes played together, in any order, at least two
 * @throws ReedplateError `HOLE_RANGE` for a wrong hole or fewer than two, `OPTION_UNKNOWN` for a wrong
 * breath, `NUMBER_RANGE` for proportions that are not rising whole numbers, one for each note
 * @example
 * ```ts
 * import { chordIntonation, makeHarp, temperHarp } from '@reedplate/layout';
 *
 * const harp = temperHarp(makeHarp('C'), 'seven-limit');
 * const { intervals } = chordIntonation(harp, [2, 3, 4, 5], 'draw', { proportions: [4, 5, 6, 7] });
 * Math.max(...intervals.map((interval) => interval.beats)) < 1e-9; // => true
 * chordIntonation(harp, [11, 12], 'draw'); // throws HOLE_RANGE
 * ```
 */
export function chordIntonation(
  tuned: TemperedHarp,
  holes: readonly number[],
  breath: Breath,
  options: ChordIntonationOptions = {},
): ChordIntonation {
  const { proportions, ...nearest } = requireOptions(options, CHORD_OPTIONS, 'chordIntonation');
  requireOneOf(breath, BREATHS, { what: 'a breath' });
  const reeds = reedsPlayed(requireShape(tuned, { reeds: 'list' }, TUNED), holes, breath);
  if (proportions !== undefined) requireProportions(proportions, reeds.length);
  const intervals = reeds.flatMap((low, lower) =>
    reeds.slice(lower + 1).map((high, offset): ChordInterval => {
      const upper = lower + 1 + offset;
      const ratio = ratioBetween(proportions, lower, upper);
      const measured = intervalIntonation(low.frequency, high.frequency, { ...nearest, ...ratio });
      return { lower, upper, ...measured };
    }),
  );
  return deepFreeze({ reeds, intervals });
}

function reedsPlayed(
  { reeds }: TemperedHarp,
  holes: readonly number[],
  breath: Breath,
): readonly TemperedReed[] {
  if (!Array.isArray(holes)) throw wrongHole(holes, 'a list of holes');
  const found = [...new Set<number>(holes)].map((hole) => {
    const reed = reeds.find((one) => one?.hole === hole && one.breath === breath);
    if (reed === undefined) throw wrongHole(hole, `a hole from 1 to ${reeds.length / 2}`);
    return reed;
  });
  if (found.length < 2) throw wrongHole(holes, 'at least two holes');
  return found.sort((a, b) => a.frequency - b.frequency);
}

function wrongHole(value: unknown, expected: string): ReedplateError {
  return new ReedplateError({ code: 'HOLE_RANGE', value, expected });
}

function requireProportions(proportions: readonly number[], notes: number): void {
  if (!Array.isArray(proportions)) throw wrongProportions(proportions, notes);
  const isRising = (proportions as readonly number[]).every(
    (part, index) => Number.isSafeInteger(part) && part > (proportions[index - 1] ?? 0),
  );
  if (isRising && proportions.length === notes) return;
  throw wrongProportions(proportions, notes);
}

function wrongProportions(value: unknown, notes: number): ReedplateError {
  const expected = `${notes} rising whole numbers, such as 4, 5, 6`;
  return new ReedplateError({ code: 'NUMBER_RANGE', value, expected });
}

function ratioBetween(
  proportions: readonly number[] | undefined,
  lower: number,
  upper: number,
): Pick<IntervalIntonationOptions, 'ratio'> {
  const low = proportions?.[lower];
  const high = proportions?.[upper];
  return low === undefined || high === undefined ? {} : { ratio: makeRatio(high, low) };
}

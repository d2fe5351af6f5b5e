import { type Harp, harpName } from '@reedplate/layout';
import type { Line } from '@reedplate/line';
import {
  type FitHarpsOptions,
  type FitRanking,
  type HarpFit,
  fitHarps as rankHarps,
} from '@reedplate/playability';

/** A harp of a ranking, with its place and name. */
export interface FitEntry extends HarpFit {
  /** From 1. */
  readonly rank: number;
  /** As a player calls it: `low F`, `Am natural-minor`. */
  readonly name: string;
}

/** What `reedplate fit --json` prints. */
export interface FitReport extends Omit<FitRanking, 'harps'> {
  readonly harps: readonly FitEntry[];
}

/**
 * Which harps suit a line, the best first, with what each asks of the player.
 *
 * @throws ReedplateError as `fitHarps`
 */
export function fitReport(
  line: Line,
  harps: readonly Harp[],
  options: FitHarpsOptions = {},
): FitReport {
  const { harps: ranked, ...found } = rankHarps(line, harps, options);
  return {
    ...found,
    harps: ranked.map((entry, at) => ({ rank: at + 1, name: harpName(entry.harp), ...entry })),
  };
}

/** Columns of a ranking as one flat record a harp, for tables and CSV. */
export interface FitRow {
  readonly rank: number;
  readonly harp: string;
  readonly key: string;
  readonly tuning: string;
  readonly register: string;
  readonly transposition: number;
  readonly playableShare: number;
  readonly missing: number;
  readonly effort: number;
  readonly effortPerMoment: number;
  readonly bends: number;
  readonly overbends: number;
  readonly chords: number;
  readonly breathChanges: number;
  readonly breathBalance: number;
  readonly fullest: number;
  readonly emptiest: number;
  readonly lowestHole: number;
  readonly highestHole: number;
}

/**
 * A ranking as flat records, one a harp, in the order of a CSV file's columns.
 *
 */
export function fitRows({ harps }: FitReport): readonly FitRow[] {
  return harps.map(({ harp, name, rank, ...found }) => ({
    rank,
    harp: name,
    key: harp.key,
    tuning: harp.tuning,
    register: harp.register,
    transposition: found.transposition,
    playableShare: found.playableShare,
    missing: found.missing,
    effort: found.effort,
    effortPerMoment: found.effortPerMoment,
    bends: found.bends,
    overbends: found.overbends,
    chords: found.chords,
    breathChanges: found.breathChanges,
    breathBalance: found.breathBalance,
    fullest: found.fullest,
    emptiest: found.emptiest,
    lowestHole: found.lowestHole,
    highestHole: found.highestHole,
  }));
}

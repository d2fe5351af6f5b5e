import { harpName } from '@reedplate/layout';
import type { FitRanking } from '@reedplate/playability';

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
  readonly effortPerEvent: number;
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
 */
export function fitRows({ harps }: FitRanking): readonly FitRow[] {
  return harps.map(({ harp, ...found }, at) => ({
    rank: at + 1,
    harp: harpName(harp),
    key: harp.key,
    tuning: harp.tuning,
    register: harp.register,
    transposition: found.transposition,
    playableShare: found.playableShare,
    missing: found.missing,
    effort: found.effort,
    effortPerEvent: found.effortPerEvent,
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

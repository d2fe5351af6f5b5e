import { centsBetween } from '@reedplate/pitch';
import { ratioCents } from './ratio.js';
import { BREATHS, type Breath, type Hole } from './sounding.js';
import type { TemperedReed } from './temper-harp.js';

/** A fifth within the reach of one chord that a temperament leaves far from pure. */
export interface ImpureFifth {
  readonly breath: Breath;
  /** The lower and the upper hole. */
  readonly holes: readonly [Hole, Hole];
  /** Its size as it is tuned. */
  readonly cents: number;
  /** Cents by which it is wider (positive) or narrower than 3:2. */
  readonly deviation: number;
}

/** A pure fifth, 3:2. */
const PURE = /* @__PURE__ */ ratioCents({ numerator: 3, denominator: 2 });
/** Holes that a chord reaches over. Common practice, no source. */
const REACH = 3;
/** A fifth this far off sounds wrong in any style; equal temperament's is 2 off. Design choice, no source. */
const LEAST_CENTS = 10;

/**
 * Where a temperament does not hold: the fifths on one breath, up to three holes apart, that come out
 * more than ten cents off. A just temperament is made for the chords of one layout; over another
 * layout its chords may be sour.
 */
export function impureFifths(reeds: readonly TemperedReed[]): readonly ImpureFifth[] {
  return BREATHS.flatMap((breath) => {
    const row = reeds.filter((reed) => reed.breath === breath);
    return row.flatMap((low, at) =>
      row
        .slice(at + 1, at + 1 + REACH)
        .filter((high) => high.pitch - low.pitch === 7)
        .map((high): ImpureFifth => {
          const cents = centsBetween(low.frequency, high.frequency);
          return { breath, holes: [low.hole, high.hole], cents, deviation: cents - PURE };
        }),
    );
  }).filter(({ deviation }) => Math.abs(deviation) > LEAST_CENTS);
}

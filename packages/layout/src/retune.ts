import { deepFreeze, type OptionNames, ReedplateError, requireOptions } from '@reedplate/pitch';
import type { Harp } from './harp.js';
import { requireWithin } from './ratio.js';
import type { ReedRemedy } from './remedy.js';
import { cautionsFor } from './retuning-cautions.js';
import type { Breath, Hole } from './sounding.js';
import { temperHarp } from './temper-harp.js';
import { type HarpLike, toHarp } from './to-harp.js';
import type { TemperamentLike } from './to-temperament.js';
import type { KnownTunings } from './to-tuning.js';

/** What is to be done to one reed. */
export interface RetuningStep {
  readonly hole: Hole;
  readonly breath: Breath;
  /** MIDI numbers of the note before and after. */
  readonly from: number;
  readonly to: number;
  /** Cents up (positive) or down. */
  readonly cents: number;
  /** Raised by thinning the tip; lowered by thinning the base or, further, by weight at the tip. */
  readonly remedy: ReedRemedy;
}

/** A plan to turn one harp into another. */
export interface RetuningPlan {
  readonly from: Harp;
  readonly to: Harp;
  /** Every reed, from hole 1 up, blow before draw. */
  readonly steps: readonly RetuningStep[];
  /** What to mind at the bench for the work there is, of {@link RETUNING_CAUTIONS}. */
  readonly cautions: readonly string[];
}

/** How {@link retuningPlan} plans. */
export interface RetuningOptions {
  /** How the harp is tuned now; default `equal`. */
  readonly fromTemperament?: TemperamentLike;
  /** How it shall be tuned; default as `fromTemperament`. */
  readonly toTemperament?: TemperamentLike;
  /** Cents, up or down, that a reed bears (inclusive); beyond it the plan says `replace`. Default 200. Common practice, no source. */
  readonly mostCents?: number;
  /** Temperaments and tunings of one's own that may be named by their id. */
  readonly known?: KnownTunings;
}

const RETUNING_OPTIONS: OptionNames<RetuningOptions> = {
  fromTemperament: true,
  toTemperament: true,
  mostCents: true,
  known: true,
};

/** Lowered further than this, a reed is weighted rather than weakened at its base. Common practice, no source. */
const MOST_CENTS_BY_FILING_BASE = 100;
/** Less than this is left alone: finer than a reed holds its pitch. Design choice, no source. */
const LEAST_CENTS = 0.5;

/**
 * What to do to each reed to turn one harp into another with as many holes: cents up or down, and
 * whether the reed bears it or should be replaced.
 *
 * @throws ReedplateError `HARP_INVALID` for another number of holes, `NUMBER_RANGE`, or what
 * `temperHarp` throws for a temperament
 * @example
 * ```ts
 * import { makeHarp, retuningPlan } from '@reedplate/layout';
 *
 * const plan = retuningPlan(makeHarp('C'), makeHarp('C', { tuning: 'raised-fifth-draw' }));
 * plan.steps.filter((step) => step.remedy !== 'leave'); // => [{ hole: 5, breath: 'draw', from: 77, to: 78, cents: 100, remedy: 'file-tip' }]
 * retuningPlan(makeHarp('C'), makeHarp('C', { tuning: 'solo-twelve' })); // throws HARP_INVALID
 * ```
 */
export function retuningPlan(
  fromHarp: HarpLike,
  toAnother: HarpLike,
  options: RetuningOptions = {},
): RetuningPlan {
  const { known = {} } = requireOptions(options, RETUNING_OPTIONS, 'retuningPlan');
  const from = toHarp(fromHarp, known);
  const to = toHarp(toAnother, known);
  if (from.holes.length !== to.holes.length) {
    const expected = `a harp with ${from.holes.length} holes, as the other has`;
    throw new ReedplateError({ code: 'HARP_INVALID', value: to.holes.length, expected });
  }
  const { fromTemperament = 'equal', toTemperament = fromTemperament, mostCents = 200 } = options;
  requireWithin(mostCents, 0, 1200, 'the most cents a reed bears');
  const after = temperHarp(to, toTemperament, { known }).reeds;
  const steps = temperHarp(from, fromTemperament, { known }).reeds.map(
    (before, index): RetuningStep => {
      // Harps with as many holes have their reeds in the same order.
      const target = after[index] ?? before;
      const cents = 100 * (target.pitch - before.pitch) + target.cents - before.cents;
      return {
        hole: before.hole,
        breath: before.breath,
        from: before.pitch,
        to: target.pitch,
        cents,
        remedy: remedyFor(cents, mostCents),
      };
    },
  );
  const cautions = cautionsFor(steps.map(({ remedy }) => remedy));
  return deepFreeze({ from, to, steps, cautions });
}

function remedyFor(cents: number, mostCents: number): ReedRemedy {
  if (Math.abs(cents) < LEAST_CENTS) return 'leave';
  if (Math.abs(cents) > mostCents) return 'replace';
  if (cents > 0) return 'file-tip';
  return -cents <= MOST_CENTS_BY_FILING_BASE ? 'file-base' : 'weight-tip';
}

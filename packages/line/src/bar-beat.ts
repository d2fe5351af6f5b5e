import { ReedplateError, requireInteger } from '@reedplate/pitch';
import { type Metre, readMetre } from './metre.js';

/** A place in music as people count it, both numbers from 1; the pickup is bar 0. */
export interface BarBeat {
  readonly bar: number;
  /** Felt beat within the bar; 2.5 is halfway from the second beat to the third. */
  readonly beat: number;
}

/** The grid that ticks are counted on. */
export interface Grid {
  readonly metre: Metre;
  /** Ticks before bar 1. */
  readonly pickup: number;
}

/**
 * The bar and beat at a tick.
 *
 * @param tick whole number from 0
 * @throws ReedplateError `NUMBER_RANGE`, `METRE_UNKNOWN`
 * @example
 * ```ts
 * import { barBeatAt } from '@reedplate/line';
 *
 * barBeatAt(4320, { metre: '4/4', pickup: 0 }); // => { bar: 2, beat: 1.5 }
 * barBeatAt(0, { metre: '4/4', pickup: 960 }); // => { bar: 0, beat: 4 }
 * ```
 */
export function barBeatAt(tick: number, { metre, pickup }: Grid): BarBeat {
  requireInteger(tick, { min: 0, what: 'a tick' });
  const { barTicks, beatTicks } = readMetre(metre);
  const fromBarOne = tick - pickup;
  const bar = Math.floor(fromBarOne / barTicks);
  return Object.freeze({ bar: bar + 1, beat: (fromBarOne - bar * barTicks) / beatTicks + 1 });
}

/**
 * The tick at a bar and beat: the inverse of {@link barBeatAt}.
 *
 * @throws ReedplateError `NUMBER_RANGE` for a place before the line, or between ticks
 * @example
 * ```ts
 * import { tickAt } from '@reedplate/line';
 *
 * tickAt({ bar: 2, beat: 1.5 }, { metre: '4/4', pickup: 0 }); // => 4320
 * tickAt({ bar: 0, beat: 1 }, { metre: '4/4', pickup: 960 }); // throws NUMBER_RANGE
 * ```
 */
export function tickAt({ bar, beat }: BarBeat, { metre, pickup }: Grid): number {
  const { barTicks, beatTicks } = readMetre(metre);
  const exact = pickup + (bar - 1) * barTicks + (beat - 1) * beatTicks;
  const tick = Math.round(exact);
  // A beat such as 1 + 1/3 is not exact in binary, so the tick it means is the nearest one.
  if (tick >= 0 && Math.abs(exact - tick) < 1e-3) return tick;
  throw new ReedplateError({
    code: 'NUMBER_RANGE',
    value: { bar, beat },
    expected: 'a place on a tick, not before the line begins',
    where: { bar, beat },
  });
}

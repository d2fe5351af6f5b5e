import { ReedplateError, requireInteger, requireShape } from '@reedplate/pitch';
import { type Metre, type MetreParts, parseMetre } from './metre.js';

/**
 * A place in music as people count it, both numbers from 1; the pickup is bar 0, and so is the last bar
 * of a count-in, the one before it bar −1.
 */
export interface BarBeat {
  readonly bar: number;
  /** Felt beat within the bar; 2.5 is halfway from the second beat to the third. */
  readonly beat: number;
}

/** The grid that ticks are counted on. */
export interface BeatGrid {
  readonly metre: Metre;
  /** Ticks before bar 1, from 0 and less than a bar. */
  readonly pickup: number;
  /** Whole bars before bar 1 that are counted in; default 0. */
  readonly countIn?: number;
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
 * barBeatAt(0, { metre: '4/4', pickup: 0, countIn: 2 }); // => { bar: -1, beat: 1 }
 * ```
 */
export function barBeatAt(tick: number, grid: BeatGrid): BarBeat {
  requireInteger(tick, { min: 0, what: 'a tick' });
  const { barTicks, beatTicks, barOne } = readGrid(grid);
  const fromBarOne = tick - barOne;
  const bar = Math.floor(fromBarOne / barTicks);
  return Object.freeze({ bar: bar + 1, beat: (fromBarOne - bar * barTicks) / beatTicks + 1 });
}

/**
 * The tick at a bar and beat: the inverse of {@link barBeatAt}.
 *
 * @param place a bar, of the pickup or the count-in too, and a beat from 1 to less than the next bar's first
 * @throws ReedplateError `NUMBER_RANGE` for a place before the line, past its bar or between ticks;
 * `METRE_UNKNOWN`
 * @example
 * ```ts
 * import { tickAt } from '@reedplate/line';
 *
 * tickAt({ bar: 2, beat: 1.5 }, { metre: '4/4', pickup: 0 }); // => 4320
 * tickAt({ bar: 0, beat: 1 }, { metre: '4/4', pickup: 960 }); // throws NUMBER_RANGE
 * tickAt({ bar: 1, beat: 5 }, { metre: '4/4', pickup: 0 }); // throws NUMBER_RANGE
 * ```
 */
export function tickAt(place: BarBeat, grid: BeatGrid): number {
  const { barTicks, beatTicks, beatsPerBar, barOne, countIn } = readGrid(grid);
  const { bar: given, beat } = requireShape(place, {}, PLACE);
  const min = Math.min(0, 1 - countIn);
  const bar = requireInteger(given, { min, what: 'a bar' });
  const exact = (typeof beat === 'number' ? beat - 1 : Number.NaN) * beatTicks;
  // A beat such as 1 + 1/3 is not exact in binary, so the tick it means is the nearest one.
  const inBar = Math.round(exact);
  const tick = barOne + (bar - 1) * barTicks + inBar;
  const isOnTick = Number.isFinite(exact) && Math.abs(exact - inBar) < LARGEST_ROUNDING;
  if (isOnTick && inBar >= 0 && inBar < barTicks && tick >= 0) {
    return requireInteger(tick, { what: 'a tick', where: { bar, beat } });
  }
  throw new ReedplateError({
    code: 'NUMBER_RANGE',
    value: beat,
    expected: `a beat on a tick, from 1 to less than ${beatsPerBar + 1}, not before the line begins`,
    where: Number.isFinite(exact) ? { bar, beat } : { bar },
  });
}

const PLACE = { what: 'a bar and a beat', code: 'NUMBER_RANGE' } as const;
const GRID = { what: 'a line, a chart, or a metre and a pickup', code: 'NUMBER_RANGE' } as const;
/** Parts of a tick by which a beat that was computed may be off. */
const LARGEST_ROUNDING = 1e-3;

interface GridParts extends MetreParts {
  readonly countIn: number;
  /** Tick at which bar 1 begins. */
  readonly barOne: number;
}

function readGrid(grid: BeatGrid): GridParts {
  const { metre, pickup, countIn = 0 } = requireShape(grid, {}, GRID);
  const parts = parseMetre(metre);
  requireInteger(pickup, { min: 0, max: parts.barTicks - 1, what: 'the ticks of a pickup' });
  requireInteger(countIn, { min: 0, what: 'bars counted in' });
  return { ...parts, countIn, barOne: pickup + countIn * parts.barTicks };
}

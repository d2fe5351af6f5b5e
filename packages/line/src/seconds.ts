import { type OptionNames, ReedplateError, requireInteger, requireOptions } from '@reedplate/pitch';
import { foldTick, type Loop, requireLoop } from './loop.js';
import { type Timing, tempoMapOf } from './tempo-map.js';

/** How {@link secondsAt} and {@link tickAtSeconds} go on. */
export interface SecondsOptions {
  /**
   * What is played again and again once it is reached, such as the choruses of a chart: ticks and
   * seconds then count on without end, and {@link foldTick} says where the music is written. Default
   * none: the last tempo goes on.
   */
  readonly loop?: Loop;
}

const SECONDS_OPTIONS: OptionNames<SecondsOptions> = { loop: true };

/**
 * The second at which a tick sounds, counted from tick 0.
 *
 * @param tick whole number from 0
 * @param timing a line, a chart or `{ tempo }`
 * @throws ReedplateError `TEMPO_MISSING`, `NUMBER_RANGE`, `METRE_UNKNOWN`
 * @example
 * ```ts
 * import { secondsAt } from '@reedplate/line';
 *
 * secondsAt(1920, { tempo: 120 }); // => 1
 * secondsAt(1440, { tempo: 60, metre: '12/8' }); // => 1
 * secondsAt(1920, { tempo: 120, tempoChanges: [{ start: 960, tempo: 60 }] }); // => 1.5
 * secondsAt(1920, {}); // throws TEMPO_MISSING
 * ```
 */
export function secondsAt(tick: number, timing: Timing, options: SecondsOptions = {}): number {
  const { loop } = requireOptions(options, SECONDS_OPTIONS, 'secondsAt');
  requireInteger(tick, { min: 0, what: 'a tick' });
  const map = tempoMapOf(timing);
  if (loop === undefined) return map.seconds(tick);
  const folded = foldTick(tick, loop);
  const passSeconds = map.seconds(loop.end) - map.seconds(loop.start);
  return map.seconds(folded.tick) + (folded.pass - 1) * passSeconds;
}

/**
 * The tick nearest to a second: the inverse of {@link secondsAt}.
 *
 * @param seconds from tick 0, a number from 0
 * @throws ReedplateError `TEMPO_MISSING`, `NUMBER_RANGE`, `METRE_UNKNOWN`
 * @example
 * ```ts
 * import { foldTick, tickAtSeconds } from '@reedplate/line';
 *
 * tickAtSeconds(1, { tempo: 120 }); // => 1920
 * const loop = { start: 0, end: 3840 };
 * const on = tickAtSeconds(2.5, { tempo: 120 }, { loop }); // => 4800
 * foldTick(on, loop); // => { tick: 960, pass: 2 }
 * tickAtSeconds(-1, { tempo: 120 }); // throws NUMBER_RANGE
 * ```
 */
export function tickAtSeconds(
  seconds: number,
  timing: Timing,
  options: SecondsOptions = {},
): number {
  const { loop } = requireOptions(options, SECONDS_OPTIONS, 'tickAtSeconds');
  const at = requireSeconds(seconds);
  const map = tempoMapOf(timing);
  const { start, end, length } = loop === undefined ? NO_LOOP : requireLoop(loop);
  if (loop === undefined || at < map.seconds(end)) return wholeTick(map.tick(at));
  const passSeconds = map.seconds(end) - map.seconds(start);
  const passes = Math.floor((at - map.seconds(start)) / passSeconds);
  return wholeTick(map.tick(at - passes * passSeconds)) + passes * length;
}

const NO_LOOP = { start: 0, end: 0, length: 0 };

/** A number of seconds from 0, if it is one. */
export function requireSeconds(seconds: unknown): number {
  if (typeof seconds === 'number' && seconds >= 0 && seconds < Number.POSITIVE_INFINITY) {
    return seconds;
  }
  throw new ReedplateError({ code: 'NUMBER_RANGE', value: seconds, expected: 'seconds, from 0' });
}

function wholeTick(tick: number): number {
  return requireInteger(Math.round(tick), { min: 0, what: 'a tick' });
}

import { requireInteger, requireShape } from '@reedplate/pitch';

/** A stretch of music that is played again and again once it is reached. */
export interface Loop {
  /** Its first tick, a whole number from 0. */
  readonly start: number;
  /** First tick after it. */
  readonly end: number;
}

/** A place in music that loops. */
export interface LoopPlace {
  /** Tick as written, before the loop's end. */
  readonly tick: number;
  /** Time through the loop, from 1; 1 before the loop is reached too. */
  readonly pass: number;
}

/**
 * Where music that loops is written, at a tick counted on without end.
 *
 * @param tick whole number from 0
 * @throws ReedplateError `NUMBER_RANGE` for no tick, or a loop without length
 * @example
 * ```ts
 * import { foldTick } from '@reedplate/line';
 *
 * const lastBars = { start: 3840, end: 11520 };
 * foldTick(12480, lastBars); // => { tick: 4800, pass: 2 }
 * foldTick(960, lastBars); // => { tick: 960, pass: 1 }
 * foldTick(0, { start: 960, end: 960 }); // throws NUMBER_RANGE
 * ```
 */
export function foldTick(tick: number, loop: Loop): LoopPlace {
  requireInteger(tick, { min: 0, what: 'a tick' });
  const { start, length } = requireLoop(loop);
  const passes = Math.max(0, Math.floor((tick - start) / length));
  return Object.freeze({ tick: tick - passes * length, pass: passes + 1 });
}

/**
 * A loop with its length, if it is one.
 *
 * @throws ReedplateError `NUMBER_RANGE`
 */
export function requireLoop(loop: Loop): Loop & { readonly length: number } {
  const what = 'a loop with the tick it starts at and the tick after its end';
  const { start, end } = requireShape(loop, {}, { what, code: 'NUMBER_RANGE' });
  requireInteger(start, { min: 0, what: 'the first tick of a loop' });
  requireInteger(end, { min: start + 1, what: 'the tick after a loop' });
  return { start, end, length: end - start };
}

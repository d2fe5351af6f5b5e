/**
 * A source of chance: numbers from 0 to below 1, in 32 bits.
 *
 * @internal
 */
export type Random = () => number;

const STEP = 0x6d2b79f5;
const WORD = 2 ** 32;

/**
 * Chance from a seed: the same numbers on every runtime, by whole numbers alone.
 *
 * @internal
 */
export function randomFrom(seed: number): Random {
  let state = seed | 0;
  return () => {
    state = (state + STEP) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / WORD;
  };
}

/** Gives whole numbers from 0 to below a bound, the same for the same seed (mulberry32). */
export type Random = (below: number) => number;

/** A generator that says the same for the same seed. */
export function makeRandom(seed: number): Random {
  let state = seed;
  return (below) => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return Math.floor((((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32) * below);
  };
}

/** One of a list. */
export function oneOf<Item>(items: readonly Item[], random: Random): Item {
  return items[random(items.length)] as Item;
}

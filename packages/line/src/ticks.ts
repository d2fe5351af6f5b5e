/** Ticks to a quarter note in all data: divisible by 2, 3, 4, 5, 6 and 8. */
export const TICKS_PER_QUARTER = 960;

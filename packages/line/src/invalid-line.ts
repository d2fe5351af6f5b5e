import { type ErrorPlace, ReedplateError, requireInteger } from '@reedplate/pitch';

/** Longest line held: 2^40 ticks, years of music, still exact in every sum made of it. */
export const LATEST_TICK = 2 ** 40;

/** The error of a value that cannot be part of a line. */
export function invalidLine(value: unknown, expected: string, where: ErrorPlace): ReedplateError {
  return new ReedplateError({ code: 'LINE_INVALID', value, expected, where });
}

/** Whole ticks within bounds, both inclusive. */
export function requireTicks(
  value: unknown,
  { min, max }: { readonly min: number; readonly max: number },
  where: ErrorPlace,
): number {
  return requireInteger(value, { min, max, what: 'whole ticks', code: 'LINE_INVALID', where });
}

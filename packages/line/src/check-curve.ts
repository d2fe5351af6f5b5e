import type { ErrorPlace } from '@reedplate/pitch';
import { invalidLine, requireTicks } from './invalid-line.js';
import type { PitchPoint } from './line.js';

/** Two octaves: further than any bend, slide or wheel of a keyboard. */
const LARGEST_CURVE = 2400;

/**
 * The points of a pitch curve, checked and frozen.
 *
 * @param at the place of a field of the note, for errors
 * @throws ReedplateError `LINE_INVALID`
 */
export function checkCurve(
  curve: readonly PitchPoint[],
  duration: number,
  at: (field: string) => ErrorPlace,
): readonly PitchPoint[] {
  if (!Array.isArray(curve)) throw invalidLine(curve, 'a list of points', at('curve'));
  let earliest = 0;
  const points = Array.from(curve as readonly PitchPoint[], (point, index): PitchPoint => {
    const field = `curve[${index}]`;
    if (typeof point !== 'object' || point === null) {
      throw invalidLine(point, 'a point with at and cents', at(field));
    }
    const bounds = { min: earliest, max: duration };
    const tick = requireTicks(point.at, bounds, at(`${field}.at`));
    earliest = tick + 1;
    const cents = requireCents(point.cents, LARGEST_CURVE, at(`${field}.cents`));
    return Object.freeze({ at: tick, cents });
  });
  return Object.freeze(points);
}

/** A number of cents, if it is one of the range. */
export function requireCents(cents: unknown, most: number, where: ErrorPlace): number {
  if (typeof cents === 'number' && Math.abs(cents) <= most) return cents + 0;
  throw invalidLine(cents, `cents, from -${most} to ${most}`, where);
}

import { type ErrorCode, requireInteger, requireShape } from '@reedplate/pitch';
import type { HoleReeds } from './harp.js';
import { MOST_HOLES } from './make-tuning.js';
import { requireReed } from './require-reed.js';

/**
 * Holes of a number from 1 to 16, each with two reeds: asked of every harp and tuning that is given, since one
 * may come from JSON.
 *
 * @throws ReedplateError with the code asked for, and the hole and breath
 */
export function checkHoles(holes: readonly HoleReeds[], code: ErrorCode): void {
  const words = { what: 'a number of holes', code, where: { path: 'holes' } };
  requireInteger(holes.length, { min: 1, max: MOST_HOLES, ...words });
  for (const [index, given] of holes.entries()) {
    const path = `holes[${index}]`;
    const { hole, blow, draw } = requireShape(given, {}, { what: 'a hole of a harp', code, path });
    requireInteger(hole, { min: 1, max: MOST_HOLES, what: 'a hole', code, where: { path } });
    requireReed(blow, code, { hole, breath: 'blow' });
    requireReed(draw, code, { hole, breath: 'draw' });
  }
}

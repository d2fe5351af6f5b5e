import { type ErrorCode, requireInteger, requireShape } from '@reedplate/pitch';
import type { HoleReeds } from './harp.js';
import { HIGHEST_REED, LOWEST_REED, MOST_HOLES } from './make-tuning.js';

/**
 * Holes of a number from 1 to 16, each with two reeds: asked of every harp and tuning that is given, since one
 * may come from JSON.
 *
 * @throws ReedplateError with the code asked for, and the hole and breath
 */
export function checkHoles(holes: readonly HoleReeds[], code: ErrorCode): void {
  const words = { what: 'a number of holes', code, where: { path: 'holes' } };
  requireInteger(holes.length, { min: 1, max: MOST_HOLES, ...words });
  for (let index = 0; index < holes.length; index += 1) {
    const path = `holes[${index}]`;
    const given = holes[index] as HoleReeds;
    const { hole, blow, draw } = requireShape(given, {}, { what: 'a hole of a harp', code, path });
    if (isHole(hole) && isReed(blow) && isReed(draw)) continue;
    const bounds = { min: LOWEST_REED, max: HIGHEST_REED, what: 'the MIDI number of a reed', code };
    requireInteger(hole, { min: 1, max: MOST_HOLES, what: 'a hole', code, where: { path } });
    requireInteger(blow, { ...bounds, where: { hole, breath: 'blow' } });
    requireInteger(draw, { ...bounds, where: { hole, breath: 'draw' } });
  }
}

function isHole(hole: unknown): boolean {
  return Number.isInteger(hole) && (hole as number) >= 1 && (hole as number) <= MOST_HOLES;
}

function isReed(pitch: unknown): boolean {
  return (
    Number.isInteger(pitch) && (pitch as number) >= LOWEST_REED && (pitch as number) <= HIGHEST_REED
  );
}

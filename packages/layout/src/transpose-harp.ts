import { parseKey, ReedplateError, requireInteger, transposeKey } from '@reedplate/pitch';
import type { Harp, Register } from './harp.js';
import { moveReeds, REGISTERS, rankInRegister } from './make-harp.js';
import { type HarpByNameOptions, type HarpLike, harpByName } from './to-harp.js';

/**
 * The same tuning in another key: every reed moved by semitones, the label and the register with
 * them.
 *
 * @param semitones any whole number that keeps the harp within its registers; negative moves down
 * @throws ReedplateError `NUMBER_RANGE` for no whole number, `HARP_INVALID` beyond the registers
 * @example
 * ```ts
 * import { makeHarp, transposeHarp } from '@reedplate/layout';
 *
 * transposeHarp(makeHarp('C'), 2).key; // => 'D'
 * transposeHarp(makeHarp('C'), -7).register; // => 'low'
 * transposeHarp(makeHarp('C'), 40); // throws HARP_INVALID
 * ```
 */
export function transposeHarp(
  given: HarpLike,
  semitones: number,
  options: HarpByNameOptions = {},
): Harp {
  const harp = harpByName(given, options, 'transposeHarp');
  requireInteger(semitones, { min: -127, max: 127, what: 'semitones' });
  const home = parseKey(harp.firstPosition);
  const key = parseKey(harp.key);
  const moved = transposeKey(key, semitones);
  const labelToHome = home.pitchClass - key.pitchClass;
  return Object.freeze({
    tuning: harp.tuning,
    key: moved.name,
    firstPosition: transposeKey(moved, labelToHome, { spelling: 'alike' }).tonic,
    register: registerAfter(harp.register, rankInRegister(home) + semitones),
    holes: moveReeds(harp.holes, semitones),
  });
}

function registerAfter(register: Register, rank: number): Register {
  const moved = REGISTERS[REGISTERS.indexOf(register) + Math.floor(rank / 12)];
  if (moved !== undefined) return moved;
  throw new ReedplateError({
    code: 'HARP_INVALID',
    value: register,
    expected: `a move within the registers ${REGISTERS.join(', ')}`,
  });
}

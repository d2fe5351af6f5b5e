import {
  deepFreeze,
  isReedplateError,
  type KeyName,
  parseKey,
  ReedplateError,
  requireOneOf,
  type Tonic,
} from '@reedplate/pitch';
import type { Harp } from './harp.js';
import { REGISTERS } from './make-harp.js';
import { makeTuning } from './make-tuning.js';
import { rowsOfHoles } from './read-tuning.js';

/**
 * A harp from a JSON value, checked and frozen. Its reeds are taken as they stand, so that a harp
 * in a tuning of one's own can be read.
 *
 * @param value what `JSON.parse` gave
 * @throws ReedplateError `HARP_INVALID` with the hole and breath or the field
 * @example
 * ```ts
 * import { makeHarp, readHarp } from '@reedplate/layout';
 *
 * readHarp(JSON.parse(JSON.stringify(makeHarp('Bb')))).key; // => 'Bb'
 * readHarp({ key: 'C' }); // throws HARP_INVALID
 * ```
 */
export function readHarp(value: unknown): Harp {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    throw new ReedplateError({ code: 'HARP_INVALID', value, expected: 'a harp as an object' });
  }
  return asHarpInvalid(() => checkHarp(value));
}

function checkHarp(value: Partial<Record<keyof Harp, unknown>>): Harp {
  const key = parseKey(value.key as KeyName);
  const home = parseKey(value.firstPosition as Tonic);
  // The label of a reed layout is its first- or its second-position key, and nothing else.
  const labelPosition = home.pitchClass === key.pitchClass ? 1 : 2;
  if (labelPosition === 2 && (home.pitchClass + 7) % 12 !== key.pitchClass) {
    throw new ReedplateError({
      code: 'HARP_INVALID',
      value: value.firstPosition,
      expected: 'the tonic of first position: that of the key, or a fifth below it',
      where: { path: 'firstPosition' },
    });
  }
  const { id, holes } = makeTuning({ id: value.tuning as string, ...rowsOfHoles(value.holes) });
  const register = requireOneOf(value.register, REGISTERS, { what: 'a register' });
  return deepFreeze({ tuning: id, key: key.name, firstPosition: home.tonic, register, holes });
}

/** What is wrong with a part of a harp, told as an error of the harp. */
function asHarpInvalid(read: () => Harp): Harp {
  try {
    return read();
  } catch (error) {
    if (!isReedplateError(error)) throw error;
    const { value, expected, nearest, where } = error;
    throw new ReedplateError({ code: 'HARP_INVALID', value, expected, nearest, where });
  }
}

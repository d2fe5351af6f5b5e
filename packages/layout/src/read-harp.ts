import {
  asErrorOf,
  deepFreeze,
  type KeyName,
  parseKey,
  ReedplateError,
  readJson,
  requireFields,
  requireOneOf,
  type Tonic,
} from '@reedplate/pitch';
import type { Harp } from './harp.js';
import { REGISTERS } from './make-harp.js';
import { makeTuning, type ReedRow } from './make-tuning.js';
import { rowsOfHoles } from './read-tuning.js';

const HARP_FIELDS = ['tuning', 'key', 'firstPosition', 'register', 'holes'] as const;
const CODE = 'HARP_INVALID';

/**
 * A harp from parsed JSON, or from JSON text: the shape of {@link Harp}, checked and frozen. Its
 * reeds are taken as they stand, so that a harp in a tuning of one's own can be read. A field of
 * another name is an error.
 *
 * @throws ReedplateError `JSON_MALFORMED`, or `HARP_INVALID` with the hole and breath or the field
 * @example
 * ```ts
 * import { makeHarp, readHarp } from '@reedplate/layout';
 *
 * readHarp(JSON.stringify(makeHarp('Bb'))).key; // => 'Bb'
 * readHarp({ key: 'C' }); // throws HARP_INVALID
 * ```
 */
export function readHarp(json: unknown): Harp {
  const fields = requireFields(readJson(json), HARP_FIELDS, { code: CODE });
  const key = asErrorOf(CODE, { path: 'key' }, () => parseKey(fields.key as KeyName));
  const home = asErrorOf(CODE, { path: 'firstPosition' }, () =>
    parseKey(fields.firstPosition as Tonic),
  );
  requireLabel(key.pitchClass - home.pitchClass, fields.firstPosition);
  const register = requireOneOf(fields.register, REGISTERS, {
    what: 'a register',
    code: CODE,
    where: { path: 'register' },
  });
  const { id, holes } = asErrorOf(CODE, {}, () => readReeds(fields.tuning, fields.holes));
  return deepFreeze({ tuning: id, key: key.name, firstPosition: home.tonic, register, holes });
}

/** The label of a harp is the key of its first or of its second position, and no other. */
function requireLabel(semitones: number, firstPosition: unknown): void {
  if (semitones === 0 || semitones === 7 || semitones === -5) return;
  throw new ReedplateError({
    code: CODE,
    value: firstPosition,
    expected: 'the tonic of first position: that of the key, or a fifth below it',
    where: { path: 'firstPosition' },
  });
}

/** Reeds are checked as those of a tuning are, which checks each value. */
function readReeds(
  id: unknown,
  holes: unknown,
): Pick<ReturnType<typeof makeTuning>, 'id' | 'holes'> {
  const { blow, draw } = rowsOfHoles(holes);
  return makeTuning({ id: id as string, blow: blow as ReedRow, draw: draw as ReedRow });
}

import {
  deepFreeze,
  type Key,
  type KeyName,
  parseKey,
  ReedplateError,
  requireOneOf,
  transposeKey,
} from '@reedplate/pitch';
import type { Harp, HoleReeds, Register } from './harp.js';
import { HIGHEST_REED, LOWEST_REED } from './make-tuning.js';
import type { Tuning } from './tuning.js';
import { tuningById } from './tunings.js';

/** How {@link makeHarp} builds. */
export interface HarpOptions {
  /** A tuning, or the id of one in the catalogue; default `standard`. */
  readonly tuning?: string | Tuning;
  /** Default `standard`: first position from G up to F#. */
  readonly register?: Register;
}

/** The registers, lowest first. */
export const REGISTERS: readonly Register[] = Object.freeze(['low-low', 'low', 'standard', 'high']);

const STANDARD_REGISTER = REGISTERS.indexOf('standard');
/** Semitones from G, the lowest key of each register, up to C. */
const G_TO_C = 5;

/**
 * Makes the harp that carries a key, in a tuning and a register. The key is read by the labelling
 * convention of the tuning: a natural minor harp in Am is played in second position for a song in
 * A minor. Where a tuning is labelled by a minor key, `A` is taken as `Am`.
 *
 * @param key text such as `A` or `Gm`, or a key
 * @throws ReedplateError `KEY_UNKNOWN`, `TUNING_UNKNOWN`, `OPTION_UNKNOWN` for a wrong register, or
 * `HARP_INVALID` for a minor key on a tuning labelled by major keys and for reeds out of range
 * @example
 * ```ts
 * import { makeHarp } from '@reedplate/layout';
 *
 * makeHarp('G').holes[0]; // => { hole: 1, blow: 55, draw: 57 }
 * makeHarp('F', { register: 'low' }).holes[0].blow; // => 53
 * makeHarp('Am', { tuning: 'natural-minor' }).firstPosition; // => 'D'
 * makeHarp('Am'); // throws HARP_INVALID
 * ```
 */
export function makeHarp(key: string | Key, options: HarpOptions = {}): Harp {
  const tuning =
    typeof options.tuning === 'object' ? options.tuning : tuningById(options.tuning ?? 'standard');
  const { register = 'standard' } = options;
  requireOneOf(register, REGISTERS, { what: 'a register' });
  const label = labelFor(typeof key === 'string' ? parseKey(key) : key, tuning);
  const home = firstPositionOf(label, tuning);
  const rank =
    rankInRegister(home) - rankInRegister(firstPositionOf(parseKey(tuning.label), tuning));
  const semitones = rank + 12 * (REGISTERS.indexOf(register) - STANDARD_REGISTER);
  return deepFreeze({
    tuning: tuning.id,
    key: label.name,
    firstPosition: home.tonic,
    register,
    holes: moveReeds(tuning.holes, semitones),
  });
}

function labelFor(key: Key, tuning: Tuning): Key {
  const { mode } = parseKey(tuning.label);
  if (key.mode === mode) return key;
  if (mode === 'minor') return parseKey(`${key.tonic}m`);
  throw new ReedplateError({
    code: 'HARP_INVALID',
    value: key.name,
    expected: `a major key: harps in ${tuning.id} tuning are named by one`,
    nearest: key.tonic satisfies KeyName,
  });
}

function firstPositionOf(label: Key, { labelPosition }: Tuning): Key {
  return transposeKey(label, labelPosition === 1 ? 0 : -7, { spelling: 'alike' });
}

/** Semitones above G, with which each register begins. */
export function rankInRegister(key: Key): number {
  return (key.pitchClass + G_TO_C) % 12;
}

/** Holes with every reed moved by semitones. */
export function moveReeds(holes: readonly HoleReeds[], semitones: number): readonly HoleReeds[] {
  return holes.map(({ hole, blow, draw }) => ({
    hole,
    blow: requireReed(blow + semitones, hole, 'blow'),
    draw: requireReed(draw + semitones, hole, 'draw'),
  }));
}

function requireReed(pitch: number, hole: number, breath: 'blow' | 'draw'): number {
  if (pitch >= LOWEST_REED && pitch <= HIGHEST_REED) return pitch;
  const expected = `a reed from ${LOWEST_REED} to ${HIGHEST_REED}`;
  throw new ReedplateError({
    code: 'HARP_INVALID',
    value: pitch,
    expected,
    where: { hole, breath },
  });
}

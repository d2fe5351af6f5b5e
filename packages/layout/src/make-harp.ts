import {
  type Key,
  type KeyLike,
  type KeyName,
  type OptionNames,
  ReedplateError,
  requireOneOf,
  requireOptions,
  toKey,
  transposeKey,
} from '@reedplate/pitch';
import type { Harp, HoleReeds, Register } from './harp.js';
import { requireReed } from './require-reed.js';
import { type KnownTunings, type TuningLike, toTuning } from './to-tuning.js';
import type { Tuning } from './tuning.js';

/** How {@link makeHarp} builds. */
export interface HarpOptions {
  /** A tuning, or the id of one in the catalogue; default `standard`. */
  readonly tuning?: TuningLike;
  /** Default `standard`: first position from G up to F#. */
  readonly register?: Register;
  /** Tunings of one's own that may be named by their id. */
  readonly known?: KnownTunings;
}

const HARP_OPTIONS: OptionNames<HarpOptions> = { tuning: true, register: true, known: true };

/** The registers, lowest first. */
export const REGISTERS: readonly Register[] = /* @__PURE__ */ Object.freeze([
  'low-low',
  'low',
  'standard',
  'high',
]);

const STANDARD_REGISTER = /* @__PURE__ */ REGISTERS.indexOf('standard');
/** Semitones from G, the lowest key of each register, up to C. */
const G_TO_C = 5;

/**
 * Makes the harp that carries a key, in a tuning and a register. The key is read by the labelling
 * convention of the tuning: a natural minor harp in Am is played in second position for a song in
 * A minor. Where a tuning is labelled by a minor key, `A` is taken as `Am`.
 *
 * @param key a key, or its name such as `A` or `Gm`; text of a user goes through `parseKey` first
 * @throws ReedplateError `KEY_UNKNOWN`, `TUNING_UNKNOWN`, `OPTION_UNKNOWN` for a wrong register, or
 * `HARP_INVALID` for a minor key on a tuning labelled by major keys and for reeds out of range
 * @example
 * ```ts
 * import { makeHarp } from '@reedplate/layout';
 *
 * makeHarp('G').holes[0]; // => { hole: 1, blow: 55, draw: 57 }
 * makeHarp('F', { register: 'low' }).holes[0]?.blow; // => 53
 * makeHarp('Am', { tuning: 'natural-minor' }).firstPosition; // => 'D'
 * makeHarp('Am'); // throws HARP_INVALID
 * ```
 */
export function makeHarp(key: KeyLike, options: HarpOptions = {}): Harp {
  const {
    tuning = 'standard',
    register = 'standard',
    known,
  } = requireOptions(options, HARP_OPTIONS, 'makeHarp');
  const layout = toTuning(tuning, known);
  requireOneOf(register, REGISTERS, { what: 'a register' });
  const label = labelFor(toKey(key), layout);
  const home = firstPositionOf(label, layout);
  const homeOfTuning = firstPositionOf(toKey(layout.label), layout);
  const octaves = REGISTERS.indexOf(register) - STANDARD_REGISTER;
  const semitones = rankInRegister(home) - rankInRegister(homeOfTuning) + 12 * octaves;
  return Object.freeze({
    tuning: layout.id,
    key: label.name,
    firstPosition: home.tonic,
    register,
    holes: moveReeds(layout.holes, semitones),
  });
}

function labelFor(key: Key, tuning: Tuning): Key {
  const { mode } = toKey(tuning.label);
  if (key.mode === mode) return key;
  if (mode === 'minor') return toKey(`${key.tonic}m`);
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

/** Holes with every reed moved by semitones, frozen. */
export function moveReeds(holes: readonly HoleReeds[], semitones: number): readonly HoleReeds[] {
  return Object.freeze(
    holes.map(({ hole, blow, draw }) =>
      Object.freeze({
        hole,
        blow: requireReed(blow + semitones, 'HARP_INVALID', { hole, breath: 'blow' }),
        draw: requireReed(draw + semitones, 'HARP_INVALID', { hole, breath: 'draw' }),
      }),
    ),
  );
}

import { requireInteger, requireOneOf } from '@reedplate/pitch';
import type { Harp } from './harp.js';
import {
  type Breath,
  type Hole,
  type Sounding,
  TECHNIQUE_LEVELS,
  type TechniqueLevel,
} from './sounding.js';
import { indexSoundings, type SoundingIndex } from './sounding-index.js';

/** Which soundings count. */
export interface SoundingOptions {
  /** What the player can do; default `overbends`: everything. */
  readonly level?: TechniqueLevel;
  /**
   * Whether the harp is half-valved: true for all holes, or the holes that are; default false. In
   * a valved hole the lower reed bends by itself and does not overbend.
   */
  readonly valved?: boolean | readonly Hole[];
}

/**
 * Every way to sound a note on a harp, by rule from its reeds: from hole 1 up, blow before draw,
 * the natural note before bends before the overbend.
 *
 * @throws ReedplateError `OPTION_UNKNOWN` for a wrong level
 * @example
 * ```ts
 * import { makeHarp, soundings } from '@reedplate/layout';
 *
 * const harp = makeHarp('C');
 * soundings(harp).length; // => 42
 * soundings(harp, { level: 'natural' })[1]; // => { hole: 1, breath: 'draw', technique: 'natural', depth: 0, pitch: 62 }
 * ```
 */
export function soundings(harp: Harp, options: SoundingOptions = {}): readonly Sounding[] {
  return indexOf(harp, options).all;
}

/**
 * What a hole sounds on one breath: the natural note first. Constant time after the first call
 * for a harp.
 *
 * @throws ReedplateError `HOLE_RANGE`, or `OPTION_UNKNOWN` for a wrong breath or level
 * @example
 * ```ts
 * import { makeHarp, soundingsAt } from '@reedplate/layout';
 *
 * const harp = makeHarp('C');
 * soundingsAt(harp, 3, 'draw').map((sounding) => sounding.pitch); // => [71, 70, 69, 68]
 * soundingsAt(harp, 11, 'draw'); // throws HOLE_RANGE
 * ```
 */
export function soundingsAt(
  harp: Harp,
  hole: number,
  breath: Breath,
  options: SoundingOptions = {},
): readonly Sounding[] {
  const last = harp.holes.length;
  requireInteger(hole, {
    min: 1,
    max: last,
    what: 'a hole',
    code: 'HOLE_RANGE',
    where: { breath },
  });
  requireOneOf(breath, ['blow', 'draw'], { what: 'a breath', where: { hole } });
  return indexOf(harp, options).ofHole[breath][hole - 1] as readonly Sounding[];
}

const NONE: readonly Sounding[] = Object.freeze([]);

/**
 * All ways to sound a pitch, from hole 1 up; an empty list where the harp does not have it.
 * Constant time after the first call for a harp.
 *
 * @param pitch MIDI number, 0 to 127
 * @throws ReedplateError `NUMBER_RANGE`, or `OPTION_UNKNOWN` for a wrong level
 * @example
 * ```ts
 * import { makeHarp, soundingsOfPitch } from '@reedplate/layout';
 * import { midi } from '@reedplate/pitch';
 *
 * const harp = makeHarp('C');
 * soundingsOfPitch(harp, midi('G4')).map(({ hole, breath }) => `${hole} ${breath}`); // => ['2 draw', '3 blow']
 * soundingsOfPitch(harp, midi('Eb4'), { level: 'bends' }); // => []
 * ```
 */
export function soundingsOfPitch(
  harp: Harp,
  pitch: number,
  options: SoundingOptions = {},
): readonly Sounding[] {
  requireInteger(pitch, { min: 0, max: 127, what: 'a MIDI note number' });
  return indexOf(harp, options).ofPitch[pitch] ?? NONE;
}

/** Indexes kept by harp and level: only of harps that cannot change, and only without valves. */
const KEPT: Readonly<Record<TechniqueLevel, WeakMap<Harp, SoundingIndex>>> = {
  natural: new WeakMap(),
  bends: new WeakMap(),
  overbends: new WeakMap(),
};

function indexOf(
  harp: Harp,
  { level = 'overbends', valved = false }: SoundingOptions,
): SoundingIndex {
  requireOneOf(level, TECHNIQUE_LEVELS, { what: 'a technique level' });
  const kept = valved === false ? KEPT[level].get(harp) : undefined;
  if (kept !== undefined) return kept;
  const index = indexSoundings(harp, level, (hole) => isValved(hole, valved));
  if (valved === false && isDeepFrozen(harp)) KEPT[level].set(harp, index);
  return index;
}

function isValved(hole: number, valved: boolean | readonly Hole[]): boolean {
  return typeof valved === 'boolean' ? valved : valved.includes(hole as Hole);
}

function isDeepFrozen(harp: Harp): boolean {
  return Object.isFrozen(harp) && Object.isFrozen(harp.holes) && harp.holes.every(Object.isFrozen);
}

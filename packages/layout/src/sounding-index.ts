import type { Harp } from './harp.js';
import { type HoleSoundings, holeSoundings } from './hole-pool.js';
import type { Hole, Sounding, TechniqueLevel } from './sounding.js';

/** All soundings of a harp, found by hole and by pitch in constant time. */
export interface SoundingIndex {
  readonly all: readonly Sounding[];
  /** From hole 1 up. */
  readonly ofHole: readonly HoleSoundings[];
  /** By MIDI number, 0 to 127; empty where the harp does not have the pitch. */
  readonly ofPitch: readonly (readonly Sounding[])[];
}

const NONE: readonly Sounding[] = Object.freeze([]);
/** An index by pitch of a harp without holes. */
const NOTHING = Array<readonly Sounding[]>(128).fill(NONE);

/** Builds the index of a harp; `valved` says of each hole whether it is. */
export function indexSoundings(
  { holes }: Harp,
  level: TechniqueLevel,
  valved: (hole: Hole) => boolean,
): SoundingIndex {
  const all: Sounding[] = [];
  const ofHole: HoleSoundings[] = [];
  const ofPitch = NOTHING.slice();
  for (const reeds of holes) {
    const found = holeSoundings(reeds, level, valved(reeds.hole));
    ofHole.push(found);
    for (const alone of found.alone) {
      const [sounding] = alone;
      const alike = ofPitch[sounding.pitch] ?? NONE;
      ofPitch[sounding.pitch] = alike === NONE ? alone : Object.freeze([...alike, sounding]);
      all.push(sounding);
    }
  }
  return { all: Object.freeze(all), ofHole, ofPitch };
}

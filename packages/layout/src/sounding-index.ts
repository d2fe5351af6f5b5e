import type { HoleReeds } from './harp.js';
import { breathSoundings } from './hole-soundings.js';
import type { Hole, Sounding, TechniqueLevel } from './sounding.js';

/** What a hole sounds on both breaths. */
export interface HoleSoundings {
  readonly blow: readonly Sounding[];
  readonly draw: readonly Sounding[];
}

/** All soundings of a harp, found by hole and by pitch in constant time. */
export interface SoundingIndex {
  readonly all: readonly Sounding[];
  /** From hole 1 up. */
  readonly ofHole: readonly HoleSoundings[];
  /** By MIDI number, 0 to 127; empty where the harp does not have the pitch. */
  readonly ofPitch: readonly (readonly Sounding[])[];
}

/** Builds the index of a harp's holes; `valved` says of each whether it is. */
export function indexSoundings(
  holes: readonly HoleReeds[],
  level: TechniqueLevel,
  valved: (hole: Hole) => boolean,
): SoundingIndex {
  const ofHole = holes.map((reeds): HoleSoundings => {
    const ability = { level, valved: valved(reeds.hole) };
    return {
      blow: breathSoundings(reeds, 'blow', ability),
      draw: breathSoundings(reeds, 'draw', ability),
    };
  });
  const all = ofHole.flatMap(({ blow, draw }) => [...blow, ...draw]);
  const ofPitch = Array.from({ length: 128 }, (): Sounding[] => []);
  for (const sounding of all) ofPitch[sounding.pitch]?.push(sounding);
  for (const alike of ofPitch) Object.freeze(alike);
  return { all: Object.freeze(all), ofHole, ofPitch };
}

import type { Harp } from './harp.js';
import { breathSoundings, type HoleAbility } from './hole-soundings.js';
import type { Breath, Sounding } from './sounding.js';

/** All soundings of a harp, found by hole and breath and by pitch in constant time. */
export interface SoundingIndex {
  readonly all: readonly Sounding[];
  readonly ofHole: Readonly<Record<Breath, readonly (readonly Sounding[])[]>>;
  readonly ofPitch: readonly (readonly Sounding[] | undefined)[];
}

/** Builds the index of a harp; `valved` says of each hole whether it is. */
export function indexSoundings(
  harp: Harp,
  level: HoleAbility['level'],
  valved: (hole: number) => boolean,
): SoundingIndex {
  const ofHole: Record<Breath, (readonly Sounding[])[]> = { blow: [], draw: [] };
  const all: Sounding[] = [];
  const ofPitch: Sounding[][] = [];
  for (const reeds of harp.holes) {
    const ability = { level, valved: valved(reeds.hole) };
    for (const breath of BREATHS) {
      const found = breathSoundings(reeds, breath, ability);
      ofHole[breath].push(found);
      for (const sounding of found) {
        all.push(sounding);
        const alike = ofPitch[sounding.pitch];
        if (alike === undefined) ofPitch[sounding.pitch] = [sounding];
        else alike.push(sounding);
      }
    }
  }
  for (const alike of ofPitch) if (alike !== undefined) Object.freeze(alike);
  return { all: Object.freeze(all), ofHole, ofPitch };
}

const BREATHS = ['blow', 'draw'] as const;

import type { Technique } from '@reedplate/layout';
import { type PitchClass, toPitchClass } from '@reedplate/pitch';
import { type Easiest, easeOf } from './easiest.js';
import { EASE_OF_TECHNIQUE } from './weights.js';

/** How well a harp has a pitch class. */
export interface Reach {
  /** The easiest technique in any octave, or `missing`. */
  readonly best: Technique | 'missing';
  /** Mean ease over all octaves within the harp's reeds: 1 all unbent, 0 missing everywhere. */
  readonly ease: number;
}

/** How well a harp has a pitch class, over every octave between its lowest and highest reed. */
export function reachOf({ lowest, highest, byPitch }: Easiest, pitchClass: PitchClass): Reach {
  const first = lowest + toPitchClass(pitchClass - lowest);
  let best: Technique | 'missing' = 'missing';
  let sum = 0;
  let octaves = 0;
  for (let pitch = first; pitch <= highest; pitch += 12) {
    octaves += 1;
    const easiest = byPitch.get(pitch);
    if (easiest === undefined) continue;
    sum += easeOf(easiest);
    if (best === 'missing' || easeOf(easiest) > EASE_OF_TECHNIQUE[best]) best = easiest.technique;
  }
  return { best, ease: octaves === 0 ? 0 : sum / octaves };
}

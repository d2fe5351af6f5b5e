import {
  type Harp,
  harpRange,
  type Sounding,
  type SoundingOptions,
  soundingsOfPitch,
  type Technique,
} from '@reedplate/layout';
import { type PitchClass, toPitchClass } from '@reedplate/pitch';
import { EASE_OF_TECHNIQUE } from './weights.js';

/** How well a harp has a pitch class. */
export interface Reach {
  /** The easiest technique in any octave, or `missing`. */
  readonly best: Technique | 'missing';
  /** Mean ease over all octaves within the harp's reeds: 1 all natural, 0 missing everywhere. */
  readonly ease: number;
}

/** How well a harp has a pitch class, over every octave between its lowest and highest reed. */
export function reachOf(harp: Harp, pitchClass: PitchClass, options: SoundingOptions): Reach {
  const { lowest, highest } = harpRange(harp);
  const first = lowest + toPitchClass(pitchClass - lowest);
  let best: Technique | 'missing' = 'missing';
  let sum = 0;
  let octaves = 0;
  for (let pitch = first; pitch <= highest; pitch += 12) {
    const easiest = easiestSounding(soundingsOfPitch(harp, pitch, options));
    octaves += 1;
    if (easiest === undefined) continue;
    sum += EASE_OF_TECHNIQUE[easiest.technique];
    if (best === 'missing' || easeOf(easiest) > EASE_OF_TECHNIQUE[best]) best = easiest.technique;
  }
  return { best, ease: octaves === 0 ? 0 : sum / octaves };
}

/** The easiest of some soundings; the lower hole, then the shallower bend, on a tie. */
export function easiestSounding(found: readonly Sounding[]): Sounding | undefined {
  let easiest: Sounding | undefined;
  for (const sounding of found) {
    if (easiest === undefined || easeOf(sounding) > easeOf(easiest)) easiest = sounding;
  }
  return easiest;
}

/** Ease of a sounding, by its technique. */
export function easeOf({ technique }: Sounding): number {
  return EASE_OF_TECHNIQUE[technique];
}

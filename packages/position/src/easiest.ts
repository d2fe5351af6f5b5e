import {
  type Harp,
  harpRange,
  type Sounding,
  type SoundingOptions,
  soundings,
} from '@reedplate/layout';
import { EASE_OF_TECHNIQUE } from './weights.js';

/** The easiest way to each pitch of a harp, and how far its reeds go. */
export interface Easiest {
  /** Lowest and highest reed, as MIDI numbers. */
  readonly lowest: number;
  readonly highest: number;
  /** By MIDI number; a pitch that cannot be sounded is not in it. */
  readonly byPitch: ReadonlyMap<number, Sounding>;
}

/** The easiest sounding of every pitch; the lower hole, then the shallower bend, on a tie. */
export function easiestOf(harp: Harp, ability: SoundingOptions): Easiest {
  const byPitch = new Map<number, Sounding>();
  for (const sounding of soundings(harp, ability)) {
    const before = byPitch.get(sounding.pitch);
    if (before === undefined || easeOf(sounding) > easeOf(before)) {
      byPitch.set(sounding.pitch, sounding);
    }
  }
  return { ...harpRange(harp), byPitch };
}

/** Ease of a sounding, by its technique. */
export function easeOf({ technique }: Sounding): number {
  return EASE_OF_TECHNIQUE[technique];
}

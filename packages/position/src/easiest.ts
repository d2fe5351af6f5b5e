import {
  type Breath,
  type Harp,
  type Hole,
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
  /** Whether the player has the unbent note of a hole, in a chord at least. */
  readonly hasNatural: (hole: Hole, breath: Breath) => boolean;
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
  return { ...harpRange(harp), byPitch, hasNatural: naturalsOf(harp, ability) };
}

/** Within a chord 2 draw is had also by who does not yet hold it alone. */
function naturalsOf(harp: Harp, { level = 'bends' }: SoundingOptions): Easiest['hasNatural'] {
  const chordal = typeof level === 'string' ? level : { ...level, holdsTwoDraw: true };
  const natural = soundings(harp, { level: chordal }).filter(({ depth }) => depth === 0);
  const had = new Set(natural.map(({ hole, breath }) => `${hole} ${breath}`));
  return (hole, breath) => had.has(`${hole} ${breath}`);
}

/** Ease of a sounding, by its technique. */
export function easeOf({ technique }: Sounding): number {
  return EASE_OF_TECHNIQUE[technique];
}

import { type Harp, harpRange } from '@reedplate/layout';
import { toPitchClass } from '@reedplate/pitch';

/**
 * The lowest pitch of a tonic at or above the lowest reed of a harp: where octave 0 begins when a
 * phrase is written as tab for it.
 */
export function homeTonic(harp: Harp, tonic: number): number {
  const { lowest } = harpRange(harp);
  return lowest + toPitchClass(tonic - lowest);
}

import type { Chord } from '@reedplate/pitch';

/** Whether a chord cannot change, so that what was found for it once holds for good. */
export function isFrozenChord(chord: Chord): boolean {
  return (
    Object.isFrozen(chord) && Object.isFrozen(chord.tones) && chord.tones.every(Object.isFrozen)
  );
}

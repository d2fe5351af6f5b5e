import type { HoleReeds } from './harp.js';
import type { Hole } from './sounding.js';

/** Unbent notes at their semitones above C. */
const NATURALS = 'C D EF G A B';

/**
 * Reads two rows of the catalogue: names with one sign at most and an octave from 0 to 9. It judges
 * nothing, so that importing the package does not parse hundreds of names; the tests hold every row
 * against `makeTuning`.
 */
export function readPlainReeds(blow: string, draw: string): readonly HoleReeds[] {
  const drawn = draw.split(' ');
  return Object.freeze(
    blow.split(' ').map((reed, at) => {
      const hole = (at + 1) as Hole;
      return Object.freeze({ hole, blow: pitchOf(reed), draw: pitchOf(drawn[at] as string) });
    }),
  );
}

function pitchOf(name: string): number {
  const sign = name.length === 2 ? 0 : name.charAt(1) === '#' ? 1 : -1;
  return 12 * (Number(name.at(-1)) + 1) + NATURALS.indexOf(name.charAt(0)) + sign;
}

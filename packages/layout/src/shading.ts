import type { Breath, Hole } from './sounding.js';
import { type HarpByNameOptions, type HarpLike, harpByName } from './to-harp.js';

/** A reed that goes down a little, and not as far as a semitone. */
export interface Shading {
  readonly hole: Hole;
  /** The breath of the higher reed. */
  readonly breath: Breath;
  /** MIDI number of the note that is shaded. */
  readonly pitch: number;
  /** Cents it goes down in ordinary playing. */
  readonly usual: number;
  /** Cents it has been measured to go down at most. */
  readonly most: number;
}

/**
 * How far a reed a semitone above its neighbour goes down, in cents. Two figures are kept, since
 * they differ: about a quarter tone is what is commonly said, and what we follow; about 90 was measured on
 * 7 blow of a harp in G. Both in Missin, letter to the harmonica list, 4 December 1996.
 */
export const SHADING_CENTS = Object.freeze({ usual: 50, most: 90 });

/**
 * The notes of a harp that shade without bending: where the reeds of a hole lie a semitone apart
 * there is no semitone between them to bend to, as in 5 draw and 7 blow of the standard layout. They
 * are no soundings: at no level do they give another note.
 *
 * @example
 * ```ts
 * import { makeHarp, shadings } from '@reedplate/layout';
 *
 * shadings(makeHarp('C')).map(({ hole, breath, usual }) => `${hole} ${breath} ${usual}`); // => ['5 draw 50', '7 blow 50']
 * ```
 */
export function shadings(harp: HarpLike, options: HarpByNameOptions = {}): readonly Shading[] {
  const { holes } = harpByName(harp, options, 'shadings');
  return Object.freeze(
    holes
      .filter(({ blow, draw }) => Math.abs(draw - blow) === 1)
      .map(({ hole, blow, draw }): Shading => {
        const breath = draw > blow ? 'draw' : 'blow';
        return Object.freeze({ hole, breath, pitch: Math.max(blow, draw), ...SHADING_CENTS });
      }),
  );
}

import type { Harp } from './harp.js';
import { harpName } from './harp-name.js';
import { BREATHS, type Breath, type Hole } from './sounding.js';
import { type HarpByNameOptions, type HarpLike, harpByName } from './to-harp.js';

/** Why something that the rule gives, or a key that can be asked for, is to be taken with care. */
export interface HarpCaveat {
  /**
   * `DEEP_BEND`: a bend that follows the rule and is hardly playable; `KEY_NOT_MADE`: a harp in a key
   * and register that no one makes.
   */
  readonly code: 'DEEP_BEND' | 'KEY_NOT_MADE';
  /** In words. */
  readonly text: string;
  /** Of a bend. */
  readonly hole?: Hole;
  readonly breath?: Breath;
}

/** Semitones that the deepest bends of the standard layout go down; beyond it few players get. */
const DEEPEST_USUAL_BEND = 3;

/**
 * MIDI numbers of 1 blow between which standard harps are made: from the F two octaves below the
 * standard one up to the high G. From memory; single makers go further now and then.
 */
const LOWEST_MADE = 41;
const HIGHEST_MADE = 67;

/**
 * What to mind about a harp: bends deeper than three semitones, as at the very top of layouts of
 * twelve and fourteen holes, and standard harps lower or higher than any that is made. Nothing of it
 * is forbidden. Common practice, no source.
 *
 * @example
 * ```ts
 * import { harpCaveats, makeHarp } from '@reedplate/layout';
 *
 * harpCaveats(makeHarp('C')); // => []
 * harpCaveats(makeHarp('C', { tuning: 'extended-fourteen' })).map(({ code, hole }) => `${code} ${hole}`); // => ['DEEP_BEND 14']
 * harpCaveats(makeHarp('F#', { register: 'high' }))[0]?.code; // => 'KEY_NOT_MADE'
 * ```
 */
export function harpCaveats(
  given: HarpLike,
  options: HarpByNameOptions = {},
): readonly HarpCaveat[] {
  const harp = harpByName(given, options, 'harpCaveats');
  return Object.freeze([...keyCaveats(harp), ...bendCaveats(harp)]);
}

function keyCaveats(harp: Harp): readonly HarpCaveat[] {
  const lowest = harp.holes[0]?.blow ?? 0;
  const isMade = lowest >= LOWEST_MADE && lowest <= HIGHEST_MADE;
  if (isMade || harp.tuning !== 'standard') return [];
  const text = `Harps in ${harpName(harp)} are not made, as far as we know.`;
  return [Object.freeze({ code: 'KEY_NOT_MADE', text })];
}

function bendCaveats({ holes }: Harp): readonly HarpCaveat[] {
  return holes.flatMap(({ hole, blow, draw }) =>
    BREATHS.filter((breath) => {
      const own = breath === 'blow' ? blow : draw;
      const other = breath === 'blow' ? draw : blow;
      return own - other - 1 > DEEPEST_USUAL_BEND;
    }).map((breath): HarpCaveat => {
      const semitones = Math.abs(draw - blow) - 1;
      const text = `${hole} ${breath} bends ${semitones} semitones by the rule; hardly anyone plays the deepest.`;
      return Object.freeze({ code: 'DEEP_BEND', text, hole, breath });
    }),
  );
}

import type { HoleReeds } from './harp.js';
import { breathSoundings } from './hole-soundings.js';
import type { Hole, Sounding, TechniqueLevel } from './sounding.js';

/** What a hole sounds on both breaths. */
export interface HoleSoundings {
  readonly blow: readonly Sounding[];
  readonly draw: readonly Sounding[];
  /** Every sounding, blow before draw, each in a list by itself: what most lookups by pitch give. */
  readonly alone: readonly (readonly [Sounding])[];
}

interface PooledHole {
  readonly reeds: HoleReeds;
  /** By level, twice: without a valve and with one. */
  readonly soundings: (HoleSoundings | undefined)[];
}

/**
 * Holes by number and reeds. The two reeds decide all that a hole sounds, and harps share most of
 * their holes, so each is worked out once; the objects are frozen, so sharing them cannot show.
 */
const POOL = new Map<number, PooledHole>();
/** Beyond this many different holes nothing more is kept. */
const MOST_POOLED = 50_000;

const RANK_OF_LEVEL: Readonly<Record<TechniqueLevel, number>> = {
  natural: 0,
  bends: 1,
  overbends: 2,
};

/** The two reeds of a hole as data, shared by all harps that have such a hole. */
export function holeReeds(hole: Hole, blow: number, draw: number): HoleReeds {
  return pooled(hole, blow, draw).reeds;
}

/** All that a hole sounds at a level, shared by all harps that have such a hole. */
export function holeSoundings(
  { hole, blow, draw }: HoleReeds,
  level: TechniqueLevel,
  valved: boolean,
): HoleSoundings {
  const { reeds, soundings } = pooled(hole, blow, draw);
  const rank = RANK_OF_LEVEL[level] + (valved ? 3 : 0);
  const known = soundings[rank];
  if (known !== undefined) return known;
  const found = workOut(reeds, level, valved);
  soundings[rank] = found;
  return found;
}

function pooled(hole: Hole, blow: number, draw: number): PooledHole {
  // Reeds are below 128: no two holes share a number. What is no such reed is not pooled.
  const number = (hole * 128 + blow) * 128 + draw;
  const known = POOL.get(number);
  if (known?.reeds.blow === blow && known.reeds.draw === draw) return known;
  const entry = {
    reeds: Object.freeze({ hole, blow, draw }),
    soundings: Array<undefined>(6).fill(undefined),
  };
  if (known === undefined && POOL.size < MOST_POOLED) POOL.set(number, entry);
  return entry;
}

function workOut(reeds: HoleReeds, level: TechniqueLevel, valved: boolean): HoleSoundings {
  const blow = breathSoundings(reeds, 'blow', { level, valved });
  const draw = breathSoundings(reeds, 'draw', { level, valved });
  const alone = [...blow, ...draw].map((sounding) => Object.freeze([sounding] as const));
  return { blow, draw, alone };
}

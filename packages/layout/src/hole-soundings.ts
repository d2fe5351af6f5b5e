import type { HoleReeds } from './harp.js';
import type { Breath, Sounding, Technique, TechniqueLevel } from './sounding.js';

/**
 * How far a valved reed bends by itself: a semitone at least, for most players a whole tone.
 * Wikipedia, "Richter-tuned harmonica", Valved diatonics.
 */
const DEEPEST_VALVED_BEND = 2;

/** What the player and the harp's valves allow in a hole. */
export interface HoleAbility {
  readonly level: TechniqueLevel;
  /** Whether the hole is half-valved. */
  readonly valved: boolean;
}

/**
 * Everything a hole sounds on one breath, by rule from its two reeds: the unbent note, bends
 * from the shallowest, then an overbend or the valved bends.
 *
 * The higher reed bends down to one semitone above the lower. The lower reed's breath overbends
 * to one semitone above the higher reed; a valve prevents that, and lets the lower reed bend by
 * itself instead (Wikipedia, "Richter-tuned harmonica", Valved diatonics). Reeds alike do neither.
 */
export function breathSoundings(
  { hole, blow, draw }: HoleReeds,
  breath: Breath,
  { level, valved }: HoleAbility,
): readonly Sounding[] {
  const own = breath === 'blow' ? blow : draw;
  const other = breath === 'blow' ? draw : blow;
  const sound = (technique: Technique, depth: number, pitch: number): Sounding =>
    Object.freeze({ hole, breath, technique, depth, pitch });

  const found = [sound('natural', 0, own)];
  if (level === 'natural' || own === other) return Object.freeze(found);
  for (let depth = 1; own - depth > other; depth += 1) {
    found.push(sound('bend', depth, own - depth));
  }
  const isLower = own < other;
  if (isLower && valved) {
    for (let depth = 1; depth <= DEEPEST_VALVED_BEND; depth += 1) {
      found.push(sound('valved-bend', depth, own - depth));
    }
  } else if (isLower && level === 'overbends') {
    found.push(sound(breath === 'blow' ? 'overblow' : 'overdraw', 1, other + 1));
  }
  return Object.freeze(found);
}

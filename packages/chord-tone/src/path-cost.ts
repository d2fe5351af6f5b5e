import type { Technique } from '@reedplate/layout';
import type { Voicing } from './voicing.js';

/**
 * What a connecting line pays, compared in this order: semitones moved, then technique. The first
 * outweighs the second, so the line is the smoothest there is, and of the smoothest the easiest.
 * The order is a design choice, no source.
 */
const SEMITONE = 1_000_000;

/** Harder techniques cost more: the order of teaching is common practice, the figures are ours. */
const TECHNIQUE_COST: Readonly<Record<Technique, number>> = Object.freeze({
  natural: 0,
  bend: 2,
  'valved-bend': 3,
  overblow: 4,
  overdraw: 5,
});

/** What a voicing costs by itself: the techniques of its notes, deeper bends more. */
export function voicingCost({ soundings }: Voicing): number {
  return soundings.reduce(
    (cost, { technique, depth }) => cost + TECHNIQUE_COST[technique] + depth,
    0,
  );
}

/** What moving to another voicing costs, judged by the lowest notes, the new one's cost included. */
export function moveCost(from: Voicing, to: Voicing): number {
  return SEMITONE * Math.abs(to.soundings[0].pitch - from.soundings[0].pitch) + voicingCost(to);
}

import type { Sounding, Technique } from '@reedplate/layout';
import { itemAt } from '@reedplate/pitch';
import type { Figure } from './voicing.js';

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

/** What a sounding costs by its technique, a deeper bend more. */
export function techniqueCost({ technique, depth }: Sounding): number {
  return TECHNIQUE_COST[technique] + depth;
}

/** What a figure costs by itself: the techniques of its notes. */
export function figureCost(figure: Figure): number {
  return figure
    .flatMap(({ soundings }) => soundings)
    .reduce((cost, sounding) => cost + techniqueCost(sounding), 0);
}

/**
 * What moving to another figure costs, judged by the lowest notes where the two meet, the new one's
 * cost included.
 */
export function moveCost(from: Figure, to: Figure): number {
  const [left] = itemAt(from, -1).soundings;
  const [reached] = itemAt(to, 0).soundings;
  const semitones = Math.abs(reached.pitch - left.pitch);
  return SEMITONE * semitones + figureCost(to);
}

import type { Choice } from './choice.js';
import type { Figures } from './figures.js';

// Air is a whole number of steps from half full: above 0 drawn in, below 0 blown out.

/** Air steps that a choice moves a step of time: draw fills, blow empties. */
export function airRate({ breath, soundings }: Choice, { chordAir }: Figures): number {
  const flow = 1 + chordAir * (soundings.length - 1);
  return breath === 'draw' ? flow : -flow;
}

/** Air steps that are moved at a rate in a time: whole, and as many in as out. */
export function airMove(rate: number, steps: number): number {
  return rate < 0 ? -Math.round(-rate * steps) : Math.round(rate * steps);
}

/** Air after a rest: brought back towards half full. */
export function afterRest(air: number, recovered: number): number {
  if (air > recovered) return air - recovered;
  return air < -recovered ? air + recovered : 0;
}

/** Air after playing: no fuller and no emptier than lungs can be. */
export function afterPlaying(air: number, move: number, { capacitySteps }: Figures): number {
  return Math.max(-capacitySteps, Math.min(capacitySteps, air + move));
}

/** Going past comfort, and past what lungs hold; coming back costs nothing. */
export function airTerm(air: number, move: number, figures: Figures): number {
  const { comfortSteps, capacitySteps, strainStep, snatchStep } = figures;
  const to = air + move;
  const far = Math.abs(to);
  if (far <= comfortSteps) return 0;
  const reached = Math.min(far, capacitySteps);
  const isSameSide = to > 0 === air > 0;
  const strainedBefore = isSameSide ? Math.max(0, Math.abs(air) - comfortSteps) : 0;
  const strained = reached - comfortSteps - strainedBefore;
  return Math.max(0, strained) * strainStep + (far - reached) * snatchStep;
}

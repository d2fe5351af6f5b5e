import { deepFreeze } from '@reedplate/pitch';
import type { EffortModel, HoleRanks } from './effort-model.js';

/**
 * Common practice, no source, for the holes of the standard layout: draw bends on 4, then 6, 1, 2,
 * 3; blow bends from 8 up; overblows on 6, 5, 4 before 1. The other ranks are assumptions.
 */
const USUAL_RANKS: HoleRanks = {
  drawBend: [0.5, 0.75, 1, 0, 0.25, 0.25, 0.5, 0.75, 0.75, 1],
  blowBend: [0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.25, 0.5, 0.75, 1],
  overbend: [0.75, 1, 1, 0.5, 0.25, 0, 0.25, 0.5, 0.5, 0.75, 1],
};

/**
 * The effort models, from the beginner's on. Their order of difficulty follows common teaching
 * practice; the figures are assumptions, to be varied (see `effortSensitivity`).
 *
 * @example
 * ```ts
 * import { EFFORT_MODELS } from '@reedplate/playability';
 *
 * EFFORT_MODELS.map(({ id, level }) => `${id}: ${level}`); // => ['beginner: natural', 'intermediate: bends', 'advanced: overbends']
 * ```
 */
export const EFFORT_MODELS: readonly EffortModel[] = /* @__PURE__ */ deepFreeze([
  {
    id: 'beginner',
    name: 'Beginner',
    use: 'Plays single unbent notes and chords; each bend is hard, breath is short.',
    level: 'natural',
    weights: {
      reach: 1.5,
      farReach: 1.5,
      breathChange: 0.6,
      repeat: 0.3,
      bend: 8,
      bendDepth: 4,
      bendHole: 4,
      blowBend: 6,
      valvedBend: 10,
      overblow: 26,
      overdraw: 36,
      overbendHole: 8,
      bendHold: 4,
      bendAttack: 3,
      bendSlide: 1,
      bendRelease: 0.5,
      hurry: 6,
      moveTime: 0.12,
      turnTime: 0.1,
      bendTime: 0.25,
      chordHole: 0.5,
      split: 4,
      airStrain: 2,
      airSnatch: 6,
      comfort: 3,
      capacity: 6,
      recovery: 1.5,
      chordAir: 0.5,
    },
    holeRanks: USUAL_RANKS,
  },
  {
    id: 'intermediate',
    name: 'Intermediate',
    use: 'Plays all draw and blow bends in tune when there is time.',
    level: 'bends',
    weights: {
      reach: 1,
      farReach: 1,
      breathChange: 0.4,
      repeat: 0.2,
      bend: 4,
      bendDepth: 2,
      bendHole: 2,
      blowBend: 4,
      valvedBend: 5,
      overblow: 14,
      overdraw: 20,
      overbendHole: 4,
      bendHold: 2,
      bendAttack: 1.5,
      bendSlide: 0.5,
      bendRelease: 0.3,
      hurry: 4,
      moveTime: 0.08,
      turnTime: 0.06,
      bendTime: 0.12,
      chordHole: 0.3,
      split: 1.5,
      airStrain: 1,
      airSnatch: 4,
      comfort: 4,
      capacity: 8,
      recovery: 2,
      chordAir: 0.4,
    },
    holeRanks: USUAL_RANKS,
  },
  {
    id: 'advanced',
    name: 'Advanced',
    use: 'Has all bends and overbends at hand; moves and breath are what is left.',
    level: 'overbends',
    weights: {
      reach: 0.7,
      farReach: 0.5,
      breathChange: 0.3,
      repeat: 0.1,
      bend: 1.5,
      bendDepth: 0.8,
      bendHole: 0.8,
      blowBend: 1.5,
      valvedBend: 1.5,
      overblow: 5,
      overdraw: 7.5,
      overbendHole: 2,
      bendHold: 0.5,
      bendAttack: 0.5,
      bendSlide: 0.2,
      bendRelease: 0.1,
      hurry: 3,
      moveTime: 0.05,
      turnTime: 0.04,
      bendTime: 0.06,
      chordHole: 0.1,
      split: 0.5,
      airStrain: 0.7,
      airSnatch: 3,
      comfort: 6,
      capacity: 12,
      recovery: 3,
      chordAir: 0.3,
    },
    holeRanks: USUAL_RANKS,
  },
]);

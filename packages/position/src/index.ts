/**
 * Harp key, position and song key; which harp to pick up, and why.
 *
 * @packageDocumentation
 */

// Positions

export {
  enharmonicKeys,
  type HarpKeyOptions,
  harpKeyOf,
  positionOf,
  songKeyOf,
} from './keys.js';
export type { Position, PositionNumber } from './position.js';
export { composePositions, POSITIONS, positionByNumber } from './positions.js';

// All that a harp sounds

export {
  type HarpMap,
  type HarpMapOptions,
  harpMap,
  type MappedHole,
  type MappedSounding,
} from './harp-map.js';

// Scales on a harp

export type { ScaleFit } from './scale-fit.js';
export { type ScaleMap, type ScaleNote, scaleMap } from './scale-map.js';
export { type RunNote, scaleRun } from './scale-run.js';

// Picking a harp

export type { ChordFit, ToneFit } from './chord-fit.js';
export { describePick } from './describe-pick.js';
export type { LineFit } from './line-fit.js';
export {
  type HarpPick,
  type PickOptions,
  type PlayerOptions,
  pickHarps,
  type SongOptions,
} from './pick.js';
export { type KeySection, type KeysPick, pickForKeys } from './pick-for-keys.js';
export { planSet, type SetOptions, type SetPlan, type SetSong, type SetStep } from './plan-set.js';
export { EASE_OF_TECHNIQUE, PICK_WEIGHTS, type PickCriterion } from './weights.js';
export type { WholeChord } from './whole-chord.js';

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

export { type ScaleMap, type ScaleNote, scaleMap } from './scale-map.js';
export { type RunNote, scaleRun } from './scale-run.js';
export type { ScaleShare } from './scale-share.js';

// Picking a harp

export type { ChordShare, ToneEase } from './chord-share.js';
export { describePick } from './describe-pick.js';
export type { LineShares } from './line-shares.js';
export {
  type HarpPick,
  type PickOptions,
  type PlayerOptions,
  pickHarps,
  type SongOptions,
} from './pick.js';
export { type KeySection, type KeysPick, pickForKeys } from './pick-for-keys.js';
export {
  planSetList,
  type SetListOptions,
  type SetListPlan,
  type SetListSong,
  type SetListStep,
} from './plan-set-list.js';
export { EASE_OF_TECHNIQUE, PICK_WEIGHTS, type PickCriterion } from './weights.js';
export type { WholeChord } from './whole-chord.js';

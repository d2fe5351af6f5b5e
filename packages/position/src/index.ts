/**
 * Harp key, position and song key; which harp to pick up, and why.
 *
 * @packageDocumentation
 */

export {
  enharmonicKeys,
  type HarpKeyOptions,
  type HarpLike,
  harpKeyOf,
  type KeyLike,
  positionOf,
  songKeyOf,
} from './keys.js';
// Picking a harp
export { type ChordFit, type HarpPick, type PickOptions, pickHarps, type ToneFit } from './pick.js';
// Positions
export type { Position, PositionNumber } from './position.js';
export { composePositions, POSITIONS, positionByNumber } from './positions.js';
export type { ScaleFit } from './scale-fit.js';
export { CRITERIA_WEIGHTS, EASE_OF_TECHNIQUE } from './weights.js';
export type { WholeChord } from './whole-chord.js';

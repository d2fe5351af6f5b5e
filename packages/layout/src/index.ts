/**
 * Tunings, harps, and every way to sound a note on them, derived from the reeds by rule.
 *
 * @packageDocumentation
 */

// Harps
export type { Harp, HoleReeds, Register } from './harp.js';
export { type HarpOptions, makeHarp, REGISTERS } from './make-harp.js';
// Tunings
export { makeTuning, type ReedRow, type TuningSpec } from './make-tuning.js';
export { harpRange, type MissingOptions, missingPitches, type PitchRange } from './range.js';
// Soundings
export {
  type Breath,
  type Hole,
  otherBreath,
  reedsSounding,
  type Sounding,
  TECHNIQUE_LEVELS,
  type Technique,
  type TechniqueLevel,
} from './sounding.js';
export { type SoundingOptions, soundings, soundingsAt, soundingsOfPitch } from './soundings.js';
export { transposeHarp } from './transpose-harp.js';
export type { Tuning } from './tuning.js';
export { TUNINGS, tuningById } from './tunings.js';

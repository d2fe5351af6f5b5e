/**
 * Tunings, harps, and every way to sound a note on them, derived from the reeds by rule.
 *
 * @packageDocumentation
 */

// Tunings

export { type EditedTuningSpec, editTuning, parseReedEdit, type ReedEdit } from './edit-tuning.js';
export { makeTuning, type ReedRow, type TuningSpec } from './make-tuning.js';
export { readTuning } from './read-tuning.js';
export type { Tuning } from './tuning.js';
export { TUNINGS, type TuningId, type TuningName, tuningById } from './tunings.js';

// Harps

export type { Harp, HoleReeds, Register } from './harp.js';
export { type HarpCaveat, harpCaveats } from './harp-caveats.js';
export { harpName, type ParseHarpOptions, parseHarp } from './harp-name.js';
export { type HarpOptions, makeHarp, REGISTERS } from './make-harp.js';
export { harpRange, type MissingOptions, missingPitches, type PitchRange } from './range.js';
export { readHarp } from './read-harp.js';
export { nameOnHarp, type Reed, reedsOf } from './reeds.js';
export { transposeHarp } from './transpose-harp.js';

// Soundings

export { SHADING_CENTS, type Shading, shadings } from './shading.js';
export {
  BREATHS,
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

// Temperament

export {
  type ChordInterval,
  type ChordTuning,
  type ChordTuningOptions,
  chordTuning,
  type IntervalTuning,
  type IntervalTuningOptions,
  intervalTuning,
} from './beats.js';
export type { ImpureFifth } from './impure-fifths.js';
export { type NearestRatioOptions, nearestRatio, type Ratio, ratioCents } from './ratio.js';
export { readScala, type ScalaOptions } from './read-scala.js';
export type { ReedCents, Temperament } from './temperament.js';
export {
  TEMPERAMENTS,
  type TemperamentId,
  type TemperamentName,
  temperamentById,
} from './temperaments.js';
export { type TunedHarp, type TunedReed, type TuneOptions, tuneHarp } from './tune-harp.js';

// Retuning

export type { ReedRemedy } from './remedy.js';
export {
  type RetuningOptions,
  type RetuningPlan,
  type RetuningStep,
  retuningPlan,
} from './retune.js';
export { RETUNING_CAUTIONS, type RetuningCaution } from './retuning-cautions.js';

/**
 * Tunings, harps, and every way to sound a note on them, derived from the reeds by rule.
 *
 * @packageDocumentation
 */

// Tunings

export {
  type EditedTuningSpec,
  editTuning,
  formatReedEdit,
  parseReedEdit,
  type ReedEdit,
} from './edit-tuning.js';
export { makeTuning, type ReedRow, type TuningSpec } from './make-tuning.js';
export { readTuning } from './read-tuning.js';
export { type KnownTunings, type TuningLike, toTuning } from './to-tuning.js';
export type { Tuning } from './tuning.js';
export { tuningById } from './tuning-by-id.js';
export { TUNINGS, type TuningId, type TuningName } from './tunings.js';

// Harps

export type { Harp, HoleReeds, Register } from './harp.js';
export { type HarpCaveat, harpCaveats } from './harp-caveats.js';
export { harpName } from './harp-name.js';
export { type HarpOptions, makeHarp, REGISTERS } from './make-harp.js';
export { type ParseHarpOptions, parseHarp } from './parse-harp.js';
export { harpRange, type MissingOptions, missingPitches, type PitchRange } from './range.js';
export { readHarp } from './read-harp.js';
export { nameOnHarp, type Reed, reedsOf } from './reeds.js';
export { type HarpByNameOptions, type HarpLike, toHarp } from './to-harp.js';
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
  TECHNIQUES,
  type Technique,
  type TechniqueLevel,
} from './sounding.js';
export {
  SOUNDING_OPTIONS,
  type SoundingOptions,
  soundings,
  soundingsAt,
  soundingsOfPitch,
} from './soundings.js';

// Players

export { makePlayer, type PlayerDetails, readPlayer } from './make-player.js';
export type { Player, PlayerSkill, SplitWidth } from './player.js';
export { PLAYERS } from './players.js';
export { type PlayerLike, toPlayer } from './to-player.js';

// Temperament

export {
  type ChordInterval,
  type ChordIntonation,
  type ChordIntonationOptions,
  chordIntonation,
  type IntervalIntonation,
  type IntervalIntonationOptions,
  intervalIntonation,
} from './beats.js';
export type { ImpureFifth } from './impure-fifths.js';
export { type NearestRatioOptions, nearestRatio, type Ratio, ratioCents } from './ratio.js';
export { readScala, type ScalaOptions } from './read-scala.js';
export {
  type TemperedHarp,
  type TemperedReed,
  type TemperOptions,
  temperHarp,
} from './temper-harp.js';
export type { ReedCents, Temperament } from './temperament.js';
export { temperamentById } from './temperament-by-id.js';
export {
  TEMPERAMENTS,
  type TemperamentId,
  type TemperamentName,
} from './temperaments.js';
export type { TemperamentLike } from './to-temperament.js';

// Retuning

export type { ReedRemedy } from './remedy.js';
export {
  type RetuningOptions,
  type RetuningPlan,
  type RetuningStep,
  retuningPlan,
} from './retune.js';
export { RETUNING_CAUTIONS, type RetuningCaution } from './retuning-cautions.js';

/**
 * How playable a line is on a harp: the exact easiest way to play it under a stated effort model.
 *
 * @packageDocumentation
 */

export type { Alternative } from './alternatives.js';
export { type BestPathsOptions, bestPath, bestPaths, type Paths } from './best-path.js';
// Paths
export type { Grip } from './choice.js';
// Effort models
export type { EffortModel, HoleRanks, Weights } from './effort-model.js';
export { EFFORT_MODELS, effortModelById } from './effort-models.js';
// Fit
export { type EveryHarpOptions, everyHarp } from './every-harp.js';
export {
  type ChoiceReason,
  type ExplainedStep,
  explainPath,
  type OtherWay,
  type PathExplanation,
} from './explain.js';
export { type Fit, type FitOptions, fit, type HarpFit } from './fit.js';
export { type EffortModelSpec, makeEffortModel } from './make-effort-model.js';
export { DEFAULT_TEMPO, type Moment, momentsOf } from './moments.js';
export type { NotPlayable, Obstacle, UnplayableMoment } from './not-playable.js';
export { OBJECTIVES, type Objective, type Path, type PathHead, type PathOptions } from './path.js';
export type { PathProfile } from './profile.js';
export {
  type Sensitivity,
  type SensitivityOptions,
  sensitivity,
  type WeightEffect,
} from './sensitivity.js';
export type { TermEfforts } from './step-terms.js';
// Studies
export {
  readStudyTune,
  type StudyCell,
  type StudyFailure,
  type StudyResult,
  type StudyTune,
  studyTune,
} from './study.js';
export { makeStudySetup, type StudySetup, type StudySpec } from './study-setup.js';
export {
  type CellSummary,
  type Interval,
  type SummaryOptions,
  summariseStudy,
} from './study-summary.js';
export { EFFORT_TERMS, type EffortTerm } from './terms.js';
// Tuning design
export {
  type CorpusCost,
  type TuningChange,
  type TuningChanges,
  type TuningChangesOptions,
  tuningChanges,
} from './tuning-changes.js';
export {
  type Ground,
  WEIGHT_IDS,
  WEIGHTS,
  type WeightId,
  type WeightInfo,
  type WeightUnit,
} from './weights.js';

/**
 * How playable a line is on a harp: the exact easiest way to play it under a stated effort model.
 *
 * @packageDocumentation
 */

export type { PathAlternative } from './alternatives.js';
export { type BestPathsOptions, bestPath, bestPaths, type LinePaths } from './best-path.js';
// Paths
export type { Grip } from './choice.js';
// Effort models
export type { EffortModel, EffortWeights, HoleRanks } from './effort-model.js';
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
export { type FitHarpsOptions, type FitRanking, fitHarps, type HarpFit } from './fit.js';
export { type EffortModelSpec, makeEffortModel } from './make-effort-model.js';
export { DEFAULT_LINE_TEMPO, type LineMoment, momentsOf } from './moments.js';
export type { NotPlayable, PathObstacle, UnplayableMoment } from './not-playable.js';
export {
  type LinePath,
  PATH_OBJECTIVES,
  type PathHead,
  type PathObjective,
  type PathOptions,
} from './path.js';
export type { PathProfile } from './profile.js';
export {
  type EffortSensitivity,
  type EffortSensitivityOptions,
  type EffortWeightEffect,
  effortSensitivity,
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
  type StudyCellSummary,
  type StudyFigure,
  type StudySummaryOptions,
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
  EFFORT_WEIGHT_IDS,
  EFFORT_WEIGHTS,
  type EffortWeightGround,
  type EffortWeightId,
  type EffortWeightInfo,
  type EffortWeightUnit,
} from './weights.js';

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
export { effortModelById } from './effort-model-by-id.js';
export { EFFORT_MODELS } from './effort-models.js';
// Fit
export { type EveryHarpOptions, everyHarp } from './every-harp.js';
export {
  type ChoiceReason,
  type ExplainedStep,
  explainPath,
  type OtherWay,
  type PathExplanation,
} from './explain.js';
export { inPoints, POINT } from './figures.js';
export {
  type FitHarpsAsyncOptions,
  type FitHarpsOptions,
  type FitRanking,
  fitHarps,
  fitHarpsAsync,
  type HarpFit,
} from './fit.js';
// For `@reedplate/study` alone
export {
  type Candidate,
  candidateOn,
  candidatesFor,
  type FitLine,
  fitLine,
  lowestReed,
  type Searched,
  searchCandidate,
} from './fit-candidate.js';
export type { StopSignal } from './in-steps.js';
// For `@reedplate/study` alone
export { doSteps, doStepsInTurn, type Steps } from './in-steps.js';
export { DEFAULT_LINE_TEMPO, eventsOf, type LineEvent } from './line-events.js';
export { type EffortModelSpec, makeEffortModel, readEffortModel } from './make-effort-model.js';
// For `@reedplate/practice` alone
export { type MoveEffort, moveEffort } from './move-effort.js';
export type { NotPlayable, PathObstacle, UnplayableEvent } from './not-playable.js';
export {
  type LinePath,
  PATH_OBJECTIVES,
  type PathHead,
  type PathObjective,
  type PathOptions,
} from './path.js';
export { type PathInPart, pathInPart } from './path-in-part.js';
export type { PathProfile } from './profile.js';
export { countTechniques } from './profile.js';
export { rankCandidates } from './rank.js';
export {
  type EffortSensitivity,
  type EffortSensitivityOptions,
  type EffortWeightEffect,
  effortSensitivity,
} from './sensitivity.js';
export { type Setting, settingOf } from './setting.js';
export type { TermEfforts } from './step-terms.js';
export { EFFORT_TERMS, type EffortTerm } from './terms.js';
export { type EffortModelLike, type KnownModels, toEffortModel } from './to-effort-model.js';
export {
  EFFORT_WEIGHT_IDS,
  EFFORT_WEIGHTS,
  type EffortWeightGround,
  type EffortWeightId,
  type EffortWeightInfo,
  type EffortWeightUnit,
} from './weights.js';

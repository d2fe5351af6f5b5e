/**
 * Studies of many tunes: how playable each is on each tuning, in every position, with summaries and
 * a search for better tunings. For Node: it reads and writes files and works in threads.
 *
 * @packageDocumentation
 */

// Comparisons over the same tunes
export {
  COMPARED_PARTS,
  type CompareCellsOptions,
  type ComparedPart,
  compareCells,
} from './compare/compare-cells.js';
export { compareStudies } from './compare/compare-studies.js';
export type {
  ComparisonOptions,
  StudyComparison,
  StudyDifference,
} from './compare/comparison.js';
// What results rest on
export {
  mergeStudyManifests,
  type StudyAsked,
  type StudyInput,
  type StudyManifest,
} from './manifest.js';
// Plots
export type { BarPlotSpec, PlotRow } from './plot/bar-plot.js';
export {
  STUDY_PLOT_FIGURES,
  type StudyPlotFigure,
  type StudyPlotOptions,
  studyPlot,
} from './plot/study-plot.js';
// Many tunes, from files to a file
export type { StudyLineFailure } from './run/batch.js';
// Results
export { readStudyManifest } from './run/manifest-file.js';
export { type ReadResultsOptions, readResults } from './run/read-results.js';
export type { StudyDone } from './run/resume.js';
export type { StudyShare } from './run/share.js';
export { openSources, type SourceOptions, type StudySources } from './run/sources.js';
export {
  type StudyCount,
  type StudyFilesOptions,
  type StudyWatcher,
  studyFiles,
} from './run/study-files.js';
// One tune
export {
  type StudyCell,
  type StudyFailure,
  type StudyResult,
  type StudyTempo,
  type StudyTempoSource,
  studyTune,
} from './study.js';
export { studyDigest } from './study-digest.js';
export { makeStudySetup, type StudySetup, type StudySpec } from './study-setup.js';
export {
  type StudyCellSummary,
  type StudyFigure,
  type StudySummaryOptions,
  summariseStudy,
} from './study-summary.js';
export { readStudyTune, type StudyTune } from './study-tune.js';
export {
  type StudySummary,
  type SummariseResultsOptions,
  summariseResults,
} from './summarise-results.js';
export { COMPARED_FIGURES, type ComparedFigure } from './tune-figure.js';
// Tuning design
export {
  type CorpusCost,
  type TuningChange,
  type TuningChanges,
  type TuningChangesAsyncOptions,
  type TuningChangesOptions,
  tuningChanges,
  tuningChangesAsync,
} from './tuning-changes.js';

/**
 * Studies of many tunes: how playable each is on each tuning, in every position, with summaries and
 * a search for better tunings. For Node: it reads and writes files and works in threads.
 *
 * @packageDocumentation
 */

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
export { readResults } from './run/read-results.js';
export { openSources, type SourceOptions, type StudySources } from './run/sources.js';
export {
  type StudyCount,
  type StudyFilesOptions,
  type StudyWatcher,
  studyFiles,
} from './run/study-files.js';
// One tune
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
export { type StudySummary, summariseResults } from './summarise-results.js';
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

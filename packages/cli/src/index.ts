/**
 * The `reedplate` command: `runCommand` runs it on any terminal, `main` on that of the process.
 *
 * @packageDocumentation
 */

// The command
export { main } from './main.js';
export { runCommand } from './run.js';
export type { Terminal } from './terminal.js';
export type { AdaptReport } from './verbs/adapt/report.js';
// What it prints with --json
export type { BackingReport } from './verbs/backing/report.js';
export type { ChartReport } from './verbs/chart/report.js';
export type { ConvertReport } from './verbs/convert/report.js';
export type { FitReport } from './verbs/fit/report.js';
export type { FormsReport } from './verbs/forms/report.js';
export type { MapReport } from './verbs/map/report.js';
export type { PathReport } from './verbs/path/report.js';
export type { PickReport } from './verbs/pick/report.js';
export type { PracticeReport } from './verbs/practice/report.js';
export type { RecogniseReport } from './verbs/recognise/report.js';
export type { RetuneReport } from './verbs/retune/report.js';
export type { ScaleReport } from './verbs/scale/report.js';
export type { ScoreReport } from './verbs/score/report.js';
export type { SetlistReport } from './verbs/setlist/report.js';
export type { SummaryReport } from './verbs/summary/report.js';
export type { TargetReport } from './verbs/target/report.js';
export type { TemperReport } from './verbs/temper/report.js';
export type { TuningsReport } from './verbs/tunings/report.js';

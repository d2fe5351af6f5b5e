/**
 * The `reedplate` command: `runCommand` runs it on any terminal, `main` on the streams of a process.
 *
 * @packageDocumentation
 */

// The command
export { type Host, main } from './main.js';
export { runCommand } from './run.js';
export type { Terminal } from './terminal.js';
// What it prints with --json
export type { AdaptAnswer } from './verbs/adapt/adapt.js';
export type { BackingAnswer } from './verbs/backing/backing.js';
export type { ChartAnswer } from './verbs/chart/chart.js';
export type { ComposeAnswer } from './verbs/compose/compose.js';
export type { ConvertAnswer } from './verbs/convert/convert.js';
export type { FitAnswer } from './verbs/fit/fit.js';
export type { FormsAnswer } from './verbs/forms/forms.js';
export type { LessonAnswer } from './verbs/lesson/lesson.js';
export type { ListenAnswer } from './verbs/listen/listen.js';
export type { MapAnswer } from './verbs/map/map.js';
export type { PathAnswer } from './verbs/path/path.js';
export type { PhrasesAnswer } from './verbs/phrases/phrases.js';
export type { PickAnswer } from './verbs/pick/pick.js';
export type { PracticeAnswer } from './verbs/practice/practice.js';
export type { RecogniseAnswer } from './verbs/recognise/recognise.js';
export type { RetuneAnswer } from './verbs/retune/retune.js';
export type { ScaleAnswer } from './verbs/scale/scale.js';
export type { ScoreAnswer } from './verbs/score/score.js';
export type { SetlistAnswer } from './verbs/setlist/setlist.js';
export type { SummaryAnswer } from './verbs/summary/summary.js';
export type { TargetAnswer } from './verbs/target/target.js';
export type { TemperAnswer } from './verbs/temper/temper.js';
export type { TuningsAnswer } from './verbs/tunings/tunings.js';

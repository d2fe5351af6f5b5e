/**
 * Where the chords of a tune lie on a harp, and how well a line follows them.
 *
 * @packageDocumentation
 */

// Where chords lie
export {
  type AvailabilityOptions,
  type ChordAvailability,
  type ChordWarning,
  type ChordWarningCode,
  chordAvailability,
} from './availability.js';
export { type ChartChordAvailability, chartAvailability } from './chart-availability.js';
// For the packages above alone
export { checkChart } from './check-chart.js';
export { chordFamily } from './chord-family.js';
// What is on now
export { type ChartPlace, type ChordNow, type ChordNowOptions, chordNow } from './chord-now.js';
export {
  type ChordShape,
  type Completeness,
  chordShapes,
  type ShapeOptions,
  type ShapeTone,
} from './chord-shape.js';
export type { Clash } from './clash.js';
export { describeWarning, type WarnedOf } from './describe-warning.js';
export { distanceBetween, type SoundingDistance } from './distance.js';
export type { Gesture } from './gesture.js';
export { type HarpCell, type HarpRow, type HarpRowsOptions, harpRows } from './harp-rows.js';
// Scoring
export type { AlignOptions } from './score/align.js';
export { describeFeedback } from './score/describe-feedback.js';
export { describeNote } from './score/describe-note.js';
export { describeVerdict } from './score/describe-verdict.js';
export { FAULT_CODES, type Fault, type FaultCode } from './score/faults.js';
export type { Following } from './score/following.js';
export { NOTE_CLASSES, type NoteClass } from './score/note-class.js';
export type { OtherHarp } from './score/other-harp.js';
export { type ProgressReport, progressOf, type TakeProgress } from './score/progress.js';
export type { Reading, ReadingKind } from './score/readings.js';
export type { WeightChanges } from './score/replace-weights.js';
export { requireScores } from './score/require-scores.js';
export { type ScoreOptions, scoreLine } from './score/score-line.js';
export type {
  BarScore,
  ChangeScore,
  ChordSuggestion,
  Feedback,
  FeedbackCode,
  NoteScore,
  Score,
  ScoreMeasures,
  Suggestion,
  TakeAlignment,
} from './score/score-types.js';
export type { SuggestOptions } from './score/suggest.js';
export type { BarTiming, TakeTiming } from './score/timing.js';
export type { Verdict, VerdictCode } from './score/verdict.js';
export { type CalibrationPoint, SCORE_WEIGHTS, type ScoreWeights } from './score/weights.js';
export {
  CHORD_ROUGHNESS,
  type ChordFamily,
  type ChordRoughness,
  PLAYING_STYLES,
  type PlayingStyle,
  styleOfKey,
} from './styles.js';
export { type Target, type TargetOptions, targetsOf } from './target.js';
export { toChord } from './to-chord.js';

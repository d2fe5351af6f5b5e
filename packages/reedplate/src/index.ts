/**
 * Reedplate in one import: every package but `@reedplate/interchange`, whose readers and writers of
 * files are imported by its own name, and the reports that the `reedplate` command prints.
 *
 * @packageDocumentation
 */

// biome-ignore-start lint/performance/noReExportAll: the umbrella is the one place that re-exports all
export * from '@reedplate/chord-tone';
export * from '@reedplate/form';
export * from '@reedplate/layout';
// biome-ignore-end lint/performance/noReExportAll: the umbrella is the one place that re-exports all
// Of these two not all: what checks input for the other packages stays between them.
export {
  type BarBeat,
  type BeatGrid,
  barBeatAt,
  centsAt,
  foldTick,
  type Line,
  type LineFromSecondsOptions,
  type LineOptions,
  type Loop,
  type LoopPlace,
  lineEnd,
  lineFromSeconds,
  type Metre,
  type MetreParts,
  type MetreUnit,
  makeLine,
  type NoteExpression,
  type NoteInSeconds,
  notesInSeconds,
  type PitchPoint,
  type PitchPointInSeconds,
  parseMetre,
  readLine,
  type SecondsOptions,
  secondsAt,
  type TempoChange,
  TICKS_PER_QUARTER,
  type TimedNote,
  type Timing,
  tickAt,
  tickAtSeconds,
  transposeLine,
} from '@reedplate/line';
export {
  type Accidental,
  type Chord,
  type ChordDegree,
  type ChordTone,
  centsBetween,
  chordOfNumeral,
  chordSuffixes,
  degreeAbove,
  ERROR_CODES,
  type ErrorCode,
  type ErrorDetails,
  type ErrorPlace,
  type FrequencyOptions,
  frequency,
  HIGHEST_MIDI,
  isReedplateError,
  type Key,
  type KeyName,
  LETTERS,
  type Letter,
  LOWEST_MIDI,
  type Mode,
  midi,
  NOTE_NAMES,
  type NoteName,
  type NoteNameParts,
  type NoteNameWithOctave,
  type Numeral,
  type NumeralAlteration,
  type NumeralStep,
  type NumeralTarget,
  noteName,
  noteNameWithOctave,
  numeralOfChord,
  PITCH_CLASSES,
  type PitchClass,
  parseChord,
  parseKey,
  parseNoteName,
  parseNumeral,
  parseScale,
  plainName,
  ReedplateError,
  SCALE_DEGREES,
  type Scale,
  type ScaleDegree,
  type SpellingOptions,
  scaleNames,
  spell,
  spellAbove,
  spellOnStep,
  TONICS,
  type Tonic,
  type TransposeKeyOptions,
  TWELVE_KEYS,
  toKey,
  toPitchClass,
  transposeKey,
  triadOf,
} from '@reedplate/pitch';
export * from '@reedplate/playability';
export * from '@reedplate/position';
export * from '@reedplate/tab';

// Reports: what the command prints
export { type BackingPart, type BackingReport, backingReport } from './reports/backing.js';
export { type ChartBar, type ChartChord, type ChartReport, chartReport } from './reports/chart.js';
export { type ConvertPart, type ConvertReport, convertReport } from './reports/convert.js';
export { type DesignEntry, type DesignReport, designReport } from './reports/design.js';
export { type FitEntry, type FitReport, type FitRow, fitReport, fitRows } from './reports/fit.js';
export {
  type ClosingEntry,
  type FormEntry,
  type FormsOptions,
  type FormsReport,
  formsReport,
} from './reports/forms.js';
export {
  type MapHole,
  type MapOptions,
  type MapReport,
  type MapSounding,
  mapReport,
} from './reports/map.js';
export {
  type PathMove,
  type PathOther,
  type PathReport,
  type PathReportOptions,
  type PlayablePathReport,
  pathReport,
} from './reports/path.js';
export { type PickEntry, type PickReport, pickReport } from './reports/pick.js';
export { type PracticeMove, type PracticeReport, practiceReport } from './reports/practice.js';
export { type RecogniseReport, recogniseReport } from './reports/recognise.js';
export { type RetuneReport, type RetuneStep, retuneReport } from './reports/retune.js';
export { type ScaleEntry, type ScaleReport, scaleReport } from './reports/scale.js';
export { type ScoreReport, scoreReport } from './reports/score.js';
export { type SetEntry, type SetReport, setReport } from './reports/set.js';
export {
  type SummaryReport,
  type SummaryRow,
  summaryReport,
  summaryRows,
} from './reports/summary.js';
export {
  type ChordShapes,
  type JudgedShape,
  type TargetBar,
  type TargetChord,
  type TargetReport,
  type TargetReportOptions,
  type TargetShape,
  type TargetTone,
  type TargetWarning,
  targetReport,
} from './reports/target.js';
export {
  type TuneInterval,
  type TuneReed,
  type TuneReport,
  type TuneReportOptions,
  tuneReport,
} from './reports/tune.js';
export { type TuningEntry, type TuningsReport, tuningsReport } from './reports/tunings.js';

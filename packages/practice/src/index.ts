/**
 * What to practise over a chart: lines that a harp can play, made for a purpose.
 *
 * @packageDocumentation
 */

// Phrases, kept by degrees
export { findPhrases, modeOfPhrase, type PhraseFilter } from './catalogue/find-phrases.js';
export { type GradeLimits, PHRASE_GRADES } from './catalogue/grades.js';
// Practice lines
export { PRACTICE_CAUTIONS } from './cautions.js';
// Lines drawn by chance, under constraints
export {
  type ComposeAsyncOptions,
  type ComposedLine,
  type ComposedStep,
  composeLine,
  composeLineAsync,
} from './compose/compose-line.js';
export type { ComposeOptions } from './compose/compose-options.js';
export { LINE_ENDINGS, type LineEnding } from './compose/constraints.js';
export { learnMelody, type MelodyExample } from './compose/learn-melody.js';
export { learnPhrases } from './compose/learn-phrases.js';
export { DEFAULT_MELODY_MODEL, type MelodyModel } from './compose/melody-model.js';
export type { Density } from './compose/rhythm.js';
export type { RhythmCell } from './compose/rhythm-cells.js';
// Exercises
export type { ExerciseKind } from './exercise/exercise-table.js';
export {
  EXERCISE_KINDS,
  type Exercise,
  type ExerciseOptions,
  makeExercise,
} from './exercise/make-exercise.js';
// The chords of a key
export { describeKeyChords } from './key-chords/describe-key-chords.js';
export {
  type ChordPlace,
  type KeyChord,
  type KeyChords,
  type KeyChordsOptions,
  keyChords,
} from './key-chords/key-chords.js';
// Lessons
export {
  LESSON_GOALS,
  type Lesson,
  type LessonGoal,
  type LessonStep,
} from './lesson/lesson.js';
export { type LessonOptions, makeLesson } from './lesson/make-lesson.js';
export {
  type HeldBend,
  type NextStep,
  type NextStepReason,
  type NextStepsOptions,
  nextSteps,
} from './lesson/next-steps.js';
export { type FormatPhraseOptions, formatPhrase } from './phrase/format-phrase.js';
export { type PhraseTime, phraseChart } from './phrase/harmony.js';
export { makePhrase, type PhraseDetails, readPhrase } from './phrase/make-phrase.js';
export { type ParsePhraseOptions, parsePhrase } from './phrase/parse-phrase.js';
export {
  BEND_SHAPES,
  type BendShape,
  PHRASE_KINDS,
  type Phrase,
  type PhraseBend,
  type PhraseGrade,
  type PhraseKind,
  type PhraseNote,
} from './phrase/phrase.js';
export { type PlaceOptions, placePhrase } from './phrase/place-phrase.js';
export type {
  OtherHarmony,
  PhraseChange,
  PhraseNotPlaced,
  PlacedPhrase,
} from './phrase/placed-phrase.js';
export { type ReadPhrasesOptions, readPhrases } from './phrase/read-phrases.js';
export { type KnownPhrases, type PhraseLike, phraseById, toPhrase } from './phrase/to-phrase.js';
export {
  PRACTICE_KINDS,
  type PracticeKind,
  type PracticeLine,
  type PracticeOptions,
  type PracticeStep,
  practiceLine,
} from './practice-line.js';
// Variations
export { ORNAMENTS, type Ornament, type PhraseVariation } from './vary/variation.js';
export { type VaryOptions, varyPhrase } from './vary/vary-phrase.js';

/**
 * What to practise over a chart: lines that a harp can play, made for a purpose.
 *
 * @packageDocumentation
 */

// Practice lines
export { PRACTICE_CAUTIONS } from './cautions.js';
// Lines drawn by chance, under constraints
export { type ComposedLine, type ComposedStep, composeLine } from './compose/compose-line.js';
export type { ComposeOptions } from './compose/compose-options.js';
export { LINE_ENDINGS, type LineEnding } from './compose/constraints.js';
export { learnMelody, type MelodyExample } from './compose/learn-melody.js';
export { DEFAULT_MELODY_MODEL, type MelodyModel } from './compose/melody-model.js';
export type { Density } from './compose/rhythm.js';
export type { RhythmCell } from './compose/rhythm-cells.js';
export {
  PRACTICE_KINDS,
  type PracticeKind,
  type PracticeLine,
  type PracticeOptions,
  type PracticeStep,
  practiceLine,
} from './practice-line.js';

/**
 * What to practise over a chart: lines that a harp can play, made for a purpose.
 *
 * @packageDocumentation
 */

// Practice lines
export { PRACTICE_CAUTIONS } from './cautions.js';
export {
  PRACTICE_KINDS,
  type PracticeKind,
  type PracticeLine,
  type PracticeOptions,
  type PracticeStep,
  practiceLine,
} from './practice-line.js';

/**
 * Tablature text and the soundings it stands for.
 *
 * @packageDocumentation
 */

// Tablature as text
export { detectTab, type TabGuess, type TabReading } from './detect-tab.js';
export { TAB_DIALECT_IDS, TAB_DIALECTS, type TabDialect, type TabDialectId } from './dialects.js';
export { formatSounding, formatTab, type TabOptions } from './format-tab.js';
// Tablature with rhythm
export {
  type LineOfTabOptions,
  liesTogether,
  lineOfTab,
  type TabOfLineOptions,
  tabOfLine,
} from './line-of-tab.js';
export { type ParseTabOptions, parseTab } from './parse-tab.js';
// What it sounds
export { type SoundOptions, soundMark } from './sound-tab.js';
export { markOf, type TabEvent, type TabMark } from './tab-mark.js';
// For the packages above alone
export {
  formatTimedTab,
  parseTimedTab,
  readBeats,
  type TimedTab,
  type WordWithLength,
  withBeats,
} from './timed-tab.js';

/**
 * Tablature text and the soundings it stands for.
 *
 * @packageDocumentation
 */

export { TAB_DIALECT_IDS, TAB_DIALECTS, type TabDialect, type TabDialectId } from './dialects.js';
export { formatSounding, formatTab, type TabOptions } from './format-tab.js';
export { readTab } from './read-tab.js';
export { type SoundOptions, soundMark } from './sound-tab.js';
export { markOf, type TabEvent, type TabMark } from './tab-mark.js';

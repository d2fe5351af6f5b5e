/**
 * Timed notes on a beat grid: whole ticks in data, bars and beats for people.
 *
 * @packageDocumentation
 */

// Lines

export type { Line, TimedNote } from './line.js';
export { type LineOptions, makeLine } from './make-line.js';
export { readLine } from './read-line.js';
export { lineEnd, transposeLine } from './transform.js';

// Time

export { type BarBeat, type BeatGrid, barBeatAt, tickAt } from './bar-beat.js';
export { type Metre, type MetreParts, type MetreUnit, parseMetre } from './metre.js';
export { TICKS_PER_QUARTER } from './ticks.js';

// For the other packages of the house alone; see docs/architecture.md

export { commonDivisor } from './common-divisor.js';
export { requireNotes } from './transform.js';

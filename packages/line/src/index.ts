/**
 * Timed notes on a beat grid: whole ticks in data, bars and beats for people, seconds for sound.
 *
 * @packageDocumentation
 */

// Lines

export { centsAt } from './cents-at.js';
export type { Line, NoteExpression, PitchPoint, TempoChange, TimedNote } from './line.js';
export { LINE_OPTIONS, type LineOptions, makeLine } from './make-line.js';
export { readLine } from './read-line.js';
export { lineEnd, transposeLine } from './transform.js';

// Time

export { type BarBeat, type BeatGrid, barBeatAt, tickAt } from './bar-beat.js';
export { type Metre, type MetreParts, type MetreUnit, parseMetre } from './metre.js';
export { TICKS_PER_QUARTER } from './ticks.js';

// Seconds

export {
  type LineFromSecondsOptions,
  lineFromSeconds,
  type NoteInSeconds,
  notesInSeconds,
  type PitchPointInSeconds,
} from './line-in-seconds.js';
export { foldTick, type Loop, type LoopPlace } from './loop.js';
export { type SecondsOptions, secondsAt, tickAtSeconds } from './seconds.js';
export type { Timing } from './tempo-map.js';

// For the other packages of the house alone; see docs/architecture.md

export { commonDivisor } from './common-divisor.js';
export { requireLine, requireNotes } from './require-line.js';
export { retimeNote } from './retime-note.js';

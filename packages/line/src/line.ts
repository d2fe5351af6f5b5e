import type { Metre } from './metre.js';

/** A point of a note's pitch curve. */
export interface PitchPoint {
  /**
   * Ticks after the note begins, a whole number from 0 to the note's duration.
   * @minimum 0
   * @asType integer
   */
  readonly at: number;
  /**
   * Cents above the note's pitch, below it under 0.
   * @minimum -2400
   * @maximum 2400
   */
  readonly cents: number;
}

/**
 * How a note is played, as far as it is known. What is not known is left out, and a list without
 * points is left out too.
 */
export interface NoteExpression {
  /**
   * Loudness as MIDI counts it, a whole number from 1 to 127.
   * @minimum 1
   * @maximum 127
   * @asType integer
   */
  readonly velocity?: number;
  /** Whether it is struck harder than its neighbours; left out where it is not. */
  readonly accent?: boolean;
  /**
   * Whether it is a grace note: short, before the note that it leads to, and without a length of its
   * own in notation. It leads to the first other note that begins with it or after it. The note
   * before keeps the length that it is written with. Left out where it is none.
   */
  readonly grace?: boolean;
  /**
   * Cents that the note as a whole lies above its pitch, below it under 0: the held part of a sung or
   * bent note.
   * @minimum -100
   * @maximum 100
   */
  readonly cents?: number;
  /**
   * The pitch from moment to moment, for bends, scoops, falls and vibrato: points in rising order,
   * straight between two, level before the first and after the last. Its cents are counted from the
   * pitch, not from `cents`, and where there is a curve it is what sounds.
   */
  readonly curve?: readonly PitchPoint[];
  /**
   * How sure a listener is of this note, from 0 to 1.
   * @minimum 0
   * @maximum 1
   */
  readonly confidence?: number;
}

/** A note in time. Notes that sound together are notes with overlapping times. */
export interface TimedNote extends NoteExpression {
  /**
   * Ticks from the beginning of the line, a whole number from 0.
   * @minimum 0
   * @asType integer
   */
  readonly start: number;
  /**
   * Ticks held, a whole number from 1.
   * @minimum 1
   * @asType integer
   */
  readonly duration: number;
  /**
   * MIDI number; C4 is 60.
   * @minimum 0
   * @maximum 127
   * @asType integer
   */
  readonly pitch: number;
}

/** A new tempo within a line. */
export interface TempoChange {
  /**
   * Tick from which it holds, a whole number from 1.
   * @minimum 1
   * @asType integer
   */
  readonly start: number;
  /** Felt beats a minute, above 0 and at most 1000. */
  readonly tempo: number;
}

/** Timed notes, one voice or with chords: a riff, a tune, a student's take. */
export interface Line {
  readonly metre: Metre;
  /**
   * Ticks before bar 1; tick 0 is the beginning of the pickup, 0 where there is none or where the line
   * begins with a count-in.
   * @minimum 0
   * @asType integer
   */
  readonly pickup: number;
  /**
   * Whole bars counted in before bar 1, at the beginning of the line: tick 0 is the first count, and
   * bar 1 begins after so many bars. A pickup then sounds within the last of them, and `pickup` is 0.
   * Left out where nothing is counted in.
   * @minimum 1
   * @maximum 64
   * @asType integer
   */
  readonly countIn?: number;
  /** Felt beats a minute, above 0 and at most 1000, where known; with changes, that of the beginning. */
  readonly tempo?: number;
  /** Where the tempo changes, in rising order; left out where it does not. Each holds until the next. */
  readonly tempoChanges?: readonly TempoChange[];
  readonly title?: string;
  /** By start, then by pitch, then by duration. */
  readonly notes: readonly TimedNote[];
}

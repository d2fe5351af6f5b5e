import type { Metre } from './metre.js';

/** A note in time. Notes that sound together are notes with overlapping times. */
export interface TimedNote {
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

/** Timed notes, one voice or with chords: a riff, a tune, a student's take. */
export interface Line {
  readonly metre: Metre;
  /**
   * Ticks before bar 1; tick 0 is the beginning of the pickup, 0 where there is none.
   * @minimum 0
   * @asType integer
   */
  readonly pickup: number;
  /** Felt beats a minute, above 0 and at most 1000, where known. */
  readonly tempo?: number;
  readonly title?: string;
  /** By start, then by pitch, then by duration. */
  readonly notes: readonly TimedNote[];
}

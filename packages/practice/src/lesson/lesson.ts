import type { Chart } from '@reedplate/form';
import type { Harp, Sounding } from '@reedplate/layout';
import type { Line } from '@reedplate/line';
import type { PositionNumber } from '@reedplate/position';
import type { KeyChords } from '../key-chords/key-chords.js';

/** What a lesson can work on, in the order in which it is taught. */
export const LESSON_GOALS = Object.freeze([
  'changes',
  'chords',
  'guide-tones',
  'riff',
  'turnaround',
  'choruses',
] as const);

/** What a lesson works on; see {@link LESSON_GOALS}. */
export type LessonGoal = (typeof LESSON_GOALS)[number];

/** A step of a lesson: something to play, and how it is practised. */
export interface LessonStep {
  readonly goal: LessonGoal;
  readonly title: string;
  /** What to reach, in words. */
  readonly words: string;
  /** Whole minutes. */
  readonly minutes: number;
  readonly line: Line;
  /** What sounds each moment of the line. */
  readonly soundings: readonly (readonly Sounding[])[];
  readonly tab: string;
  /** Felt beats a minute, each when the one before is easy. */
  readonly tempos: readonly number[];
  /** First and last bar to loop. */
  readonly loop: { readonly from: number; readonly to: number };
  /** What the band plays under it: options of `makeBacking` of `@reedplate/backing`, and how often round. */
  readonly backing: { readonly countIn: number; readonly choruses: number };
  /** How it is judged, in words. */
  readonly judged: string;
  /** What is played otherwise than it was written, and why: empty where all is as written. */
  readonly playedOtherwise: readonly string[];
  readonly cautions: readonly string[];
}

/** A lesson: the song, the harp, the chords of the key, and steps in order. */
export interface Lesson {
  readonly title: string;
  readonly chart: Chart;
  readonly harp: Harp;
  readonly position: PositionNumber;
  readonly minutes: number;
  readonly chords: KeyChords;
  /** The first page: the chords of the key in words. */
  readonly words: readonly string[];
  readonly steps: readonly LessonStep[];
}

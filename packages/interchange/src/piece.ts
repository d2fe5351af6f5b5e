import type { Chart } from '@reedplate/form';
import type { Line } from '@reedplate/line';
import type { KeyName } from '@reedplate/pitch';
import type { PartChoice } from './part-choice.js';
import type { PieceWarning } from './warning.js';

/** One voice, track or staff of a piece. */
export interface PiecePart {
  /** As the file names it; empty where it does not. */
  readonly name: string;
  /**
   * General MIDI program, counted from 1, where it is known; 23 is the harmonica.
   * @minimum 1
   * @maximum 128
   * @asType integer
   */
  readonly program?: number;
  /** Whether the pitches are the sounds of a General MIDI drum kit; left out otherwise. */
  readonly percussion?: true;
  /**
   * Long to short eighth of this part where the feel is swung; left out where it goes with the others.
   * @minimum 1
   * @maximum 4
   */
  readonly swing?: number;
  readonly line: Line;
}

/** What writers write: a line, and all that a format can hold besides. */
export interface Sheet {
  /** The tune. */
  readonly line: Line;
  /** Key of the beginning. */
  readonly key?: KeyName;
  /** The chords. */
  readonly chart?: Chart;
  /** More parts: a backing, or the voices of a piece that was read (then `line` among them). */
  readonly parts?: readonly PiecePart[];
}

/** What a reader found in a file: the tune, its chords, and what was left out. */
export interface Piece extends Sheet {
  /** The tune: the part that was asked for or that looks most like a melody. */
  readonly line: Line;
  /** Key of the beginning, where the file gives one; modes are named by their third: D dorian is Dm. */
  readonly key?: KeyName;
  /** The chord symbols bar by bar, where the file has any. */
  readonly chart?: Chart;
  /** Which part the line is, and why; left out where there are no notes. */
  readonly choice?: PartChoice;
  /** All parts with notes, `line` among them. */
  readonly parts: readonly PiecePart[];
  /** What is not in the line and the chart, as data; empty where nothing is lost. */
  readonly warnings: readonly PieceWarning[];
}

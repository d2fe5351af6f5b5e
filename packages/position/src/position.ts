import type { PitchClass } from '@reedplate/pitch';

/** Number of a position, counted by fifths from the harp's own key. */
export type PositionNumber = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9 | 10 | 11 | 12;

/** A position: which key a harp is played in. */
export interface Position {
  readonly number: PositionNumber;
  /** `1st`, `2nd`, as written. */
  readonly ordinal: string;
  /** What players call it, where they have a name for it. */
  readonly tradeName?: string;
  /** Semitones of the song's key above the harp's first position. */
  readonly semitones: PitchClass;
  /** Mode that the unbent notes of the standard layout give; absent where the tonic is not among them. */
  readonly mode?: string;
}

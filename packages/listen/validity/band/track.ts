import type { GrooveId } from '@reedplate/backing';
import type { FormId } from '@reedplate/form';

/** What a band does to a form: plays it, leaves a bar out, adds one, plays half of it, or plays none of the catalogue. */
export type Plan = 'plain' | 'left-out' | 'added' | 'half' | 'absent';

/** A track to be made and heard. */
export interface Track {
  readonly id: number;
  readonly form: FormId;
  /** Pitch class of the tonic. */
  readonly tonic: number;
  /** Felt beats a minute, as it is written. */
  readonly tempo: number;
  readonly choruses: number;
  /** A groove of ours, or how another program plays chord symbols. */
  readonly player: GrooveId | 'abc-stride' | 'abc-arpeggio';
  readonly font: 'small' | 'large';
  /** Hertz of A4. */
  readonly reference: number;
  readonly plan: Plan;
  /** Whether somebody plays over it. */
  readonly lead: boolean;
  readonly seed: number;
}

/** A chord that sounds, or none. */
export interface TrueChord {
  readonly start: number;
  readonly end: number;
  readonly root: number | null;
  /** Whether its third is minor. */
  readonly minor: boolean;
}

/** What a track holds, in seconds. */
export interface Truth {
  readonly tempo: number;
  /** Pitch class of the tonic as it sounds, to the nearest semitone of an A4 of 440 hertz. */
  readonly tonic: number;
  readonly minor: boolean;
  /** Cents from there. */
  readonly cents: number;
  readonly form: FormId | null;
  readonly barLines: readonly number[];
  readonly chords: readonly TrueChord[];
}

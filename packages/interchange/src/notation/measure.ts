import type { NoteExpression } from '@reedplate/line';
import type { ErrorPlace } from '@reedplate/pitch';

/** A point of a pitch curve. */
export interface SharePoint {
  /** Share of the note's length, from 0 to 1, with all that is tied to it. */
  readonly share: number;
  readonly cents: number;
}

/** How a note is played, as far as notation says. */
export interface PlayedAs extends Pick<NoteExpression, 'velocity' | 'accent' | 'cents'> {
  readonly curve?: readonly SharePoint[];
}

/** A note within a measure. */
export interface MeasureNote {
  /** Ticks from the beginning of the measure; may lie between ticks, as in a septuplet. */
  readonly offset: number;
  /** Ticks held, above 0; may lie between ticks. */
  readonly duration: number;
  /** MIDI number. */
  readonly pitch: number;
  /** Whether it is tied to the next note of its pitch. */
  readonly tied: boolean;
  readonly played?: PlayedAs;
}

/** Grace notes that sound together, before a note. */
export interface MeasureGrace {
  /** Ticks from the beginning of the measure to the note that they lead to. */
  readonly offset: number;
  readonly notes: readonly GraceNote[];
}

/** One of them. */
export interface GraceNote {
  /** MIDI number. */
  readonly pitch: number;
  readonly played?: PlayedAs;
}

/** A tempo within a measure. */
export interface MeasureTempo {
  readonly offset: number;
  /** Quarter notes a minute. */
  readonly quarters: number;
}

/** A chord symbol within a measure. */
export interface MeasureChord {
  readonly offset: number;
  readonly text: string;
}

/** Signs that playing jumps by, or ends at. */
export type JumpKind = 'segno' | 'coda' | 'to-coda' | 'fine' | 'da-capo' | 'dal-segno';

/** A sign that playing jumps by. */
export interface Jump {
  readonly kind: JumpKind;
  /** Ticks from the beginning of the measure to where the sign stands. */
  readonly offset: number;
  /** Where what it stands at ends: the end of a note that it is written over. */
  readonly end: number;
  /** Name of the segno or coda; empty where it has none. */
  readonly name: string;
  /** Where a jump says that it leads in the end. */
  readonly until?: 'fine' | 'coda';
}

/** What stands between two bar lines, as written: repeats are not yet played. */
export interface Measure {
  readonly notes: readonly MeasureNote[];
  readonly chords: readonly MeasureChord[];
  /** Grace notes in the order they are played; left out where there are none. */
  readonly graces?: readonly MeasureGrace[];
  /** Left out where there are none. */
  readonly tempos?: readonly MeasureTempo[];
  /** Ticks from its first to its last; shorter than a bar in a pickup or around a repeat. */
  readonly length: number;
  /** Whether a repeat begins here. */
  readonly opens: boolean;
  /** Whether a double bar stands before it, to which a repeat that nothing opens goes back. */
  readonly isAfterDoubleBar?: boolean;
  /** Times the repeat that ends here is played; 0 where none ends. */
  readonly closes: number;
  /** The passes that this measure is played in, where it is part of an ending. */
  readonly endings?: readonly number[];
  /** Signs to jump by; left out where there are none. */
  readonly jumps?: readonly Jump[];
  /** Label of the part of the tune that begins here. */
  readonly label?: string;
  readonly where: ErrorPlace;
}

import type { KeyName } from '@reedplate/pitch';
import type { Hole } from './sounding.js';

/** Register of a harp: the standard set runs from G (low) to F# (high); the others move by octaves. */
export type Register = 'low' | 'standard' | 'high';

/** The two reeds of a hole, as MIDI numbers. */
export interface HoleReeds {
  readonly hole: Hole;
  readonly blow: number;
  readonly draw: number;
}

/** A tuning in a key: what a player picks up. */
export interface Harp {
  /** Id of the tuning. */
  readonly tuning: string;
  /** The key printed on it, by the labelling convention of its tuning. */
  readonly key: KeyName;
  readonly register: Register;
  /** From hole 1 up. */
  readonly holes: readonly HoleReeds[];
}

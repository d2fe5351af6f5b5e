import type { KeyName, Tonic } from '@reedplate/pitch';
import type { Hole } from './sounding.js';

/**
 * Register of a harp. The standard set runs from G (hole 1 blow G3) up to F# (F#4); each other
 * register is the same set octaves away.
 */
export type Register = 'low-low' | 'low' | 'standard' | 'high';

/** The two reeds of a hole. */
export interface HoleReeds {
  readonly hole: Hole;
  /**
   * MIDI number of the blow reed.
   * @minimum 2
   * @maximum 126
   * @asType integer
   */
  readonly blow: number;
  /**
   * MIDI number of the draw reed.
   * @minimum 2
   * @maximum 126
   * @asType integer
   */
  readonly draw: number;
}

/** A tuning in a key: what a player picks up. */
export interface Harp {
  /** Id of the tuning. */
  readonly tuning: string;
  /** The key printed on it, by the labelling convention of its tuning. */
  readonly key: KeyName;
  /** Tonic of first position, from which positions are counted: not `key` where a harp is labelled by its second position. */
  readonly firstPosition: Tonic;
  readonly register: Register;
  /**
   * From hole 1 up.
   * @minItems 1
   * @maxItems 16
   */
  readonly holes: readonly HoleReeds[];
}

/** A temperament: how far each degree lies from equal temperament. */
export interface Temperament {
  /** Lower-case words with hyphens. */
  readonly id: string;
  readonly name: string;
  /** A named publication, `computed`, or `own construction`. */
  readonly source: string;
  /**
   * Cents above equal temperament of the twelve semitones from the tonic of first position up;
   * null for a degree that the temperament has no pitch for.
   * @minItems 12
   * @maxItems 12
   */
  readonly cents: readonly (number | null)[];
  /** Cents by which every octave is wider than 1200: 0 but for stretched octaves. */
  readonly octaveStretch: number;
}

/** Cents above equal temperament of every reed, from hole 1 up. */
export interface ReedCents {
  readonly blow: readonly number[];
  readonly draw: readonly number[];
}

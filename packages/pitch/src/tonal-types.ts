/** The part of what `Note.get` of tonal gives that is read here. */
export interface TonalNote {
  /** `Bb3`, or `Bb` without an octave; empty where tonal knows no such note. */
  readonly name: string;
  /** The name without its octave. */
  readonly pc: string;
}

/** The part of what `Chord.get` of tonal gives that is read here. */
export interface TonalChord {
  readonly symbol: string;
  /** The root; nothing where tonal knows no such chord, or the chord has no root. */
  readonly tonic: string | null;
  /** Suffixes of the kind of chord. */
  readonly aliases: readonly string[];
  /** The note under the slash, or empty. */
  readonly bass: string;
}

/** The part of what `Scale.get` and `ScaleType.get` of tonal give that is read here. */
export interface TonalScale {
  /** The name, after a tonic where there is one. */
  readonly name: string;
  /** The name without the tonic. */
  readonly type?: string;
  readonly intervals: readonly string[];
}

/** The part of what `Key.majorKey` and `Key.minorKey` of tonal give that is read here. */
export interface TonalKey {
  readonly type: 'major' | 'minor';
  readonly tonic: string;
}

import {
  type Chord,
  type ChordDegree,
  itemAt,
  SCALE_DEGREES,
  type ScaleDegree,
  toPitchClass,
} from '@reedplate/pitch';
import { chordFamily } from './chord-family.js';
import { CHORD_ROUGHNESS, type PlayingStyle } from './styles.js';

/** A note outside a chord that disturbs it. */
export interface Clash {
  /** Degree above the chord's root. */
  readonly above: ScaleDegree;
  /** How badly in the style asked for: above 0, up to 1 (a plain wrong note). */
  readonly roughness: number;
  /** The tone of the chord a semitone away that it stands against, the lower first, if any. */
  readonly against?: ChordDegree;
}

/** How much a note outside the chord disturbs it in a style, 0 (a colour) to 1. */
export function roughnessOf(above: ScaleDegree, chord: Chord, style: PlayingStyle): number {
  return CHORD_ROUGHNESS[style][chordFamily(chord)][above];
}

/** The clash of a note with a chord, or `undefined` where the style hears a colour. */
export function clashOf(above: ScaleDegree, chord: Chord, style: PlayingStyle): Clash | undefined {
  const roughness = roughnessOf(above, chord, style);
  if (roughness === 0) return undefined;
  const against = semitoneNeighbour(above, chord);
  return Object.freeze({ above, roughness, ...(against === undefined ? {} : { against }) });
}

function semitoneNeighbour(above: ScaleDegree, chord: Chord): ChordDegree | undefined {
  const pitchClass = SCALE_DEGREES.indexOf(above) + itemAt(chord.tones, 0).pitchClass;
  const near = [pitchClass - 1, pitchClass + 1].map(toPitchClass);
  return near
    .map((neighbour) => chord.tones.find((tone) => tone.pitchClass === neighbour)?.degree)
    .find((degree) => degree !== undefined);
}

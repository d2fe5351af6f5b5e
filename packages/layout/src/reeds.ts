import {
  type FrequencyOptions,
  frequency,
  type NoteName,
  type NoteNameWithOctave,
  parseKey,
  parseNoteName,
  spell,
  spellOnStep,
  type Tonic,
  toPitchClass,
} from '@reedplate/pitch';
import type { Harp } from './harp.js';
import type { Breath, Hole } from './sounding.js';

/** A reed of a harp. */
export interface Reed {
  readonly hole: Hole;
  readonly breath: Breath;
  /** MIDI number. */
  readonly pitch: number;
  /** Spelled in the key of the harp's first position. */
  readonly name: NoteNameWithOctave;
  /** In Hz, equal-tempered. */
  readonly frequency: number;
}

/**
 * The reeds of a harp by name and frequency: from hole 1 up, blow before draw.
 *
 * @example
 * ```ts
 * import { makeHarp, reedsOf } from '@reedplate/layout';
 *
 * reedsOf(makeHarp('A'))[2]; // => { hole: 2, breath: 'blow', pitch: 61, name: 'C#4', frequency: 277.1826309768721 }
 * ```
 */
export function reedsOf(harp: Harp, options: FrequencyOptions = {}): readonly Reed[] {
  const reed = (hole: Hole, breath: Breath, pitch: number): Reed =>
    Object.freeze({
      hole,
      breath,
      pitch,
      name: reedName(pitch, harp.firstPosition),
      frequency: frequency(pitch, options),
    });
  return Object.freeze(
    harp.holes.flatMap(({ hole, blow, draw }) => [
      reed(hole, 'blow', blow),
      reed(hole, 'draw', draw),
    ]),
  );
}

/**
 * A reed a tritone above first position is a raised fourth, the leading note of cross harp; every
 * other is spelled as in the key.
 */
function reedName(pitch: number, firstPosition: Tonic): NoteNameWithOctave {
  const key = parseKey(firstPosition);
  const pitchClass = toPitchClass(pitch);
  const isTritone = toPitchClass(pitchClass - key.pitchClass) === 6;
  const name = isTritone
    ? (raisedFourth(firstPosition, pitchClass) ?? spell(pitchClass, key))
    : spell(pitchClass, key);
  const octave = Math.floor((pitch - parseNoteName(name).alteration) / 12) - 1;
  return `${name}${octave}`;
}

function raisedFourth(
  tonic: Tonic,
  pitchClass: ReturnType<typeof toPitchClass>,
): NoteName | undefined {
  const name = spellOnStep(pitchClass, parseNoteName(tonic).step + 3);
  return name === undefined || name.length > 2 ? undefined : name;
}

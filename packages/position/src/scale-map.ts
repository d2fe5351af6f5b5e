import {
  type Harp,
  type HarpLike,
  harpRange,
  SOUNDING_OPTIONS,
  type Sounding,
  type SoundingOptions,
  soundingsOfPitch,
  TECHNIQUE_LEVELS,
  type TechniqueLevel,
  toHarp,
} from '@reedplate/layout';
import type { KeyLike, ScaleLike } from '@reedplate/pitch';
import {
  degreeAbove,
  type Key,
  type KeyName,
  type NoteNameWithOctave,
  noteNameWithOctave,
  parseScale,
  requireOptions,
  type ScaleDegree,
  toKey,
  toPitchClass,
} from '@reedplate/pitch';
import { easeOf, easiestOf } from './easiest.js';
import { positionOf } from './keys.js';
import type { PositionNumber } from './position.js';

import { type ScaleShare, scaleShare } from './scale-share.js';

/** A note of a scale on a harp. */
export interface ScaleNote {
  /** MIDI number. */
  readonly pitch: number;
  /** Spelled in the song's key. */
  readonly name: NoteNameWithOctave;
  readonly degree: ScaleDegree;
  /** Every way to sound it, the easiest first; none where it is missing. */
  readonly soundings: readonly Sounding[];
}

/** Where a scale lies on a harp. */
export interface ScaleMap {
  readonly scale: string;
  readonly key: KeyName;
  readonly position: PositionNumber;
  /** The scale's notes between the harp's lowest and highest reed, rising. */
  readonly notes: readonly ScaleNote[];
  /** How much of it can be sounded at each technique level. */
  readonly levels: Readonly<Record<TechniqueLevel, ScaleShare>>;
}

/**
 * Where each degree of a scale lies on a harp in each octave, by which technique, what is missing
 * and how much of it each technique level covers.
 *
 * @param scale a scale by name, such as `blues`, `major pentatonic` or `mixolydian`
 * @param options which soundings `notes` lists
 * @throws ReedplateError `KEY_UNKNOWN`, `SCALE_UNKNOWN`, `OPTION_UNKNOWN` for a wrong level
 * @example
 * ```ts
 * import { scaleMap } from '@reedplate/position';
 *
 * const map = scaleMap('C', 'G', 'blues');
 * map.position; // => 2
 * map.notes[0]?.degree; // => '4'
 * map.levels.natural.missing; // => ['b3', 'b5']
 * map.levels.bends.missing; // => []
 * scaleMap('C', 'G', 'blue'); // throws SCALE_UNKNOWN
 * ```
 */
export function scaleMap(
  given: HarpLike,
  songKey: KeyLike,
  scale: ScaleLike,
  options: SoundingOptions = {},
): ScaleMap {
  const { valved = false, known } = requireOptions(options, SOUNDING_OPTIONS, 'scaleMap');
  const harp = toHarp(given, known);
  const key = toKey(songKey);
  const read = parseScale(scale);
  const levels = TECHNIQUE_LEVELS.map((level) => [
    level,
    scaleShare(easiestOf(harp, { level, valved }), key, read),
  ]);
  return Object.freeze({
    scale: read.name,
    key: key.name,
    position: positionOf(harp, key),
    notes: scaleNotes(harp, key, scale, options),
    levels: Object.freeze(Object.fromEntries(levels)),
  });
}

/** The scale's notes within the range of the harp's reeds, with their soundings. */
export function scaleNotes(
  harp: Harp,
  key: Key,
  scale: ScaleLike,
  options: SoundingOptions,
): readonly ScaleNote[] {
  const degrees = new Set(parseScale(scale).semitones.map((above) => degreeAbove(above, 0)));
  const { lowest, highest } = harpRange(harp);
  const notes: ScaleNote[] = [];
  for (let pitch = lowest; pitch <= highest; pitch += 1) {
    const degree = degreeAbove(toPitchClass(pitch), key.pitchClass);
    if (!degrees.has(degree)) continue;
    const name = noteNameWithOctave(pitch, { key });
    const found = soundingsOfPitch(harp, pitch, options).toSorted((a, b) => easeOf(b) - easeOf(a));
    notes.push(Object.freeze({ pitch, name, degree, soundings: Object.freeze(found) }));
  }
  return Object.freeze(notes);
}

import {
  type FrequencyOptions,
  frequency,
  type NoteName,
  type NoteNameWithOctave,
  type OptionNames,
  type PitchClass,
  parseKey,
  parseNoteName,
  requireInteger,
  requireOptions,
  spell,
  spellOnStep,
  type Tonic,
  toPitchClass,
} from '@reedplate/pitch';
import type { Breath, Hole } from './sounding.js';
import { type HarpByNameOptions, type HarpLike, harpByName, toHarp } from './to-harp.js';

/** A reed of a harp. */
export interface Reed {
  readonly hole: Hole;
  readonly breath: Breath;
  /** MIDI number. */
  readonly pitch: number;
  /** As {@link nameOnHarp} spells it. */
  readonly name: NoteNameWithOctave;
  /** In Hz, equal-tempered. */
  readonly frequency: number;
}

const REEDS_OPTIONS: OptionNames<FrequencyOptions & HarpByNameOptions> = { a4: true, known: true };

/**
 * The reeds of a harp by name and frequency: from hole 1 up, blow before draw.
 *
 * @throws ReedplateError `HARP_INVALID` for what is no harp, `NUMBER_RANGE` for a4
 * @example
 * ```ts
 * import { makeHarp, reedsOf } from '@reedplate/layout';
 *
 * reedsOf(makeHarp('A'))[2]; // => { hole: 2, breath: 'blow', pitch: 61, name: 'C#4', frequency: 277.1826309768721 }
 * ```
 */
export function reedsOf(
  given: HarpLike,
  options: FrequencyOptions & HarpByNameOptions = {},
): readonly Reed[] {
  const { known, ...at } = requireOptions(options, REEDS_OPTIONS, 'reedsOf');
  const harp = toHarp(given, known);
  const reed = (hole: Hole, breath: Breath, pitch: number): Reed =>
    Object.freeze({
      hole,
      breath,
      pitch,
      name: nameOnHarp(harp, pitch),
      frequency: frequency(pitch, at),
    });
  return Object.freeze(
    harp.holes.flatMap(({ hole, blow, draw }) => [
      reed(hole, 'blow', blow),
      reed(hole, 'draw', draw),
    ]),
  );
}

/**
 * The name of a pitch on a harp: spelled as in the key of its first position, except that the
 * tritone is a raised fourth (F# on a C harp), the leading note of cross harp.
 *
 * @param pitch MIDI number, 0 to 127
 * @throws ReedplateError `NUMBER_RANGE`
 * @example
 * ```ts
 * import { makeHarp, nameOnHarp } from '@reedplate/layout';
 *
 * nameOnHarp(makeHarp('C'), 66); // => 'F#4'
 * nameOnHarp(makeHarp('Gm', { tuning: 'natural-minor' }), 70); // => 'Bb4'
 * nameOnHarp(makeHarp('C'), 128); // throws NUMBER_RANGE
 * ```
 */
export function nameOnHarp(
  harp: HarpLike,
  pitch: number,
  options: HarpByNameOptions = {},
): NoteNameWithOctave {
  const { firstPosition } = harpByName(harp, options, 'nameOnHarp');
  requireInteger(pitch, { min: 0, max: 127, what: 'a MIDI note number' });
  const key = parseKey(firstPosition);
  const pitchClass = toPitchClass(pitch);
  const isTritone = toPitchClass(pitchClass - key.pitchClass) === 6;
  const raised = isTritone ? raisedFourth(firstPosition, pitchClass) : undefined;
  const name = raised ?? spell(pitchClass, key);
  const octave = Math.floor((pitch - parseNoteName(name).alteration) / 12) - 1;
  return `${name}${octave}`;
}

function raisedFourth(tonic: Tonic, pitchClass: PitchClass): NoteName | undefined {
  const name = spellOnStep(pitchClass, parseNoteName(tonic).step + 3);
  return name === undefined || name.length > 2 ? undefined : name;
}

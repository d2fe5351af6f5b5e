import {
  type Harp,
  type HarpCaveat,
  type HarpLike,
  type Hole,
  harpCaveats,
  nameOnHarp,
  type Shading,
  SOUNDING_OPTIONS,
  type Sounding,
  type SoundingOptions,
  shadings,
  soundings,
  type Technique,
  toHarp,
} from '@reedplate/layout';
import {
  degreeAbove,
  type Key,
  type KeyLike,
  type KeyName,
  type NoteNameWithOctave,
  noteNameWithOctave,
  type OptionNames,
  requireOptions,
  type ScaleDegree,
  toKey,
  toPitchClass,
} from '@reedplate/pitch';

/** One way to sound a note, on the map of a harp. */
export interface MappedSounding extends Sounding {
  /** Spelled in the song's key, where one is given, else in the harp's. */
  readonly name: NoteNameWithOctave;
  /** Degree in the song's key; only where one is given. */
  readonly degree?: ScaleDegree;
}

/** A hole on the map of a harp: unbent notes, then bends, then the overbend. */
export interface MappedHole {
  readonly hole: Hole;
  readonly soundings: readonly MappedSounding[];
}

/** All that a harp sounds, hole by hole. */
export interface HarpMap {
  readonly harp: Harp;
  /** Key of the song, or null where none is given. */
  readonly key: KeyName | null;
  /** From hole 1 up. */
  readonly holes: readonly MappedHole[];
  /** Notes that go down by less than a semitone: no other note, but heard. */
  readonly shadings: readonly Shading[];
  /** What the rule gives and hardly anyone plays, and keys that no one makes. */
  readonly caveats: readonly HarpCaveat[];
}

/** How {@link harpMap} looks at a harp. */
export interface HarpMapOptions extends SoundingOptions {
  /** Key of the song; default none, and then no degrees are given. */
  readonly key?: KeyLike;
}

const HARP_MAP_OPTIONS: OptionNames<HarpMapOptions> = { ...SOUNDING_OPTIONS, key: true };

/**
 * All that a harp sounds, hole by hole, and what degree of a song each note is.
 *
 * @throws ReedplateError `KEY_UNKNOWN`, and what `soundings` throws
 * @example
 * ```ts
 * import { harpMap } from '@reedplate/position';
 *
 * const { holes } = harpMap('C', { key: 'G' });
 * holes[2]?.soundings.map(({ name }) => name); // => ['G4', 'B4', 'Bb4', 'A4', 'Ab4']
 * holes[2]?.soundings.map(({ degree }) => degree); // => ['1', '3', 'b3', '2', 'b2']
 * ```
 */
export function harpMap(given: HarpLike, options: HarpMapOptions = {}): HarpMap {
  const { key, ...which } = requireOptions(options, HARP_MAP_OPTIONS, 'harpMap');
  const harp = toHarp(given, which.known);
  const song = key === undefined ? undefined : toKey(key);
  const all = soundings(harp, which);
  const holes = harp.holes.map(({ hole }) => {
    const own = all.filter((sounding) => sounding.hole === hole).sort(byTechnique);
    return Object.freeze({
      hole,
      soundings: Object.freeze(own.map((sounding) => mapped(sounding, harp, song))),
    });
  });
  return Object.freeze({
    harp,
    key: song?.name ?? null,
    holes: Object.freeze(holes),
    shadings: shadings(harp),
    caveats: harpCaveats(harp),
  });
}

function mapped(sounding: Sounding, harp: Harp, song: Key | undefined): MappedSounding {
  const { pitch } = sounding;
  if (song === undefined) return Object.freeze({ ...sounding, name: nameOnHarp(harp, pitch) });
  return Object.freeze({
    ...sounding,
    name: noteNameWithOctave(pitch, { key: song }),
    degree: degreeAbove(toPitchClass(pitch), song.pitchClass),
  });
}

const ORDER: readonly Technique[] = ['natural', 'bend', 'valved-bend', 'overblow', 'overdraw'];

const byTechnique = (a: Sounding, b: Sounding): number =>
  ORDER.indexOf(a.technique) - ORDER.indexOf(b.technique);

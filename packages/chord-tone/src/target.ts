import {
  type HarpLike,
  type KnownTunings,
  type PlayerLike,
  SOUNDING_OPTIONS,
  type Sounding,
  soundings,
} from '@reedplate/layout';
import {
  type Chord,
  type ChordDegree,
  type ChordLike,
  type ChordTone,
  type NoteNameWithOctave,
  type OptionNames,
  requireOptions,
  toPitchClass,
} from '@reedplate/pitch';
import { distanceBetween, type SoundingDistance } from './distance.js';
import { spelledPitch } from './spelled-pitch.js';
import { toChord } from './to-chord.js';

/** A sounding that voices a tone of a chord. */
export interface Target {
  readonly sounding: Sounding;
  readonly degree: ChordDegree;
  /** Spelled by the chord: the third of Db7 is F, its seventh Cb. */
  readonly name: NoteNameWithOctave;
  /** From where the player is now; only where `from` was given. */
  readonly distance?: SoundingDistance;
}

/** What {@link targetsOf} may use, and where the player is. */
export interface TargetOptions {
  /** Who plays, by a level or as a `Player`; default `bends`. */
  readonly level?: PlayerLike;
  /** Whether the harp is half-valved, so that its lower reeds bend too; default false. */
  readonly valved?: boolean;
  /** Tunings of one's own, for a harp that is named in one. */
  readonly known?: KnownTunings;
  /** The sounding played now; default none, and then no distance is given. */
  readonly from?: Sounding;
}

const TARGET_OPTIONS: OptionNames<TargetOptions> = { ...SOUNDING_OPTIONS, from: true };

/**
 * Every way to sound every tone of a chord on a harp, in the order of the holes.
 *
 * @param chord a chord, or its symbol as `parseChord` of `@reedplate/pitch` reads it
 * @throws ReedplateError `CHORD_UNKNOWN`, or `OPTION_UNKNOWN` for the level
 * @example
 * ```ts
 * import { targetsOf } from '@reedplate/chord-tone';
 *
 * const fifths = targetsOf('G7', 'C', { level: 'natural' })
 *   .filter(({ degree }) => degree === '5');
 * fifths.map(({ sounding }) => sounding.hole); // => [1, 4, 8]
 * fifths.map(({ name }) => name); // => ['D4', 'D5', 'D6']
 * targetsOf('valueOf', 'C'); // throws CHORD_UNKNOWN
 * ```
 */
export function targetsOf(
  chord: ChordLike,
  harp: HarpLike,
  options: TargetOptions = {},
): readonly Target[] {
  const { from, ...which } = requireOptions(options, TARGET_OPTIONS, 'targetsOf');
  const parsed = toChord(chord);
  const all = soundings(harp, which);
  const tones = toneByPitchClass(parsed);
  return Object.freeze(
    all.flatMap((sounding) => {
      const tone = tones[toPitchClass(sounding.pitch)];
      return tone === undefined ? [] : [makeTarget(sounding, tone, from)];
    }),
  );
}

/** Tones of a chord by pitch class; where two share one, the first named keeps it. */
export function toneByPitchClass(chord: Chord): readonly (ChordTone | undefined)[] {
  const tones = new Array<ChordTone | undefined>(12).fill(undefined);
  for (const tone of chord.tones) tones[tone.pitchClass] ??= tone;
  return tones;
}

function makeTarget(sounding: Sounding, tone: ChordTone, from: Sounding | undefined): Target {
  return Object.freeze({
    sounding,
    degree: tone.degree,
    name: spelledPitch(sounding.pitch, tone.name),
    ...(from === undefined ? {} : { distance: distanceBetween(from, sounding) }),
  });
}

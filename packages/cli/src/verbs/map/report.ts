import {
  type Breath,
  type Harp,
  type Hole,
  nameOnHarp,
  soundings,
  type Technique,
} from '@reedplate/layout';
import {
  degreeAbove,
  frequency,
  type Key,
  type KeyName,
  type NoteNameWithOctave,
  noteNameWithOctave,
  type ScaleDegree,
  toPitchClass,
} from '@reedplate/pitch';
import { formatSounding } from '@reedplate/tab';

/** One way to sound a note, on the map of a harp. */
export interface MapSounding {
  readonly breath: Breath;
  readonly technique: Technique;
  /** Semitones bent, or 1 for an overbend; 0 for a natural note. */
  readonly depth: number;
  /** In signs: `-3''`. */
  readonly tab: string;
  /** MIDI number. */
  readonly pitch: number;
  /** Spelled in the song's key, where one is given, else in the harp's. */
  readonly note: NoteNameWithOctave;
  /** Hz in equal temperament from A4 = 440, to a thousandth. */
  readonly frequency: number;
  /** Degree in the song's key; only where one is given. */
  readonly degree?: ScaleDegree;
}

/** A hole on the map of a harp: natural notes, then bends, then the overbend. */
export interface MapHole {
  readonly hole: Hole;
  readonly soundings: readonly MapSounding[];
}

/** What `reedplate map --json` prints. */
export interface MapReport {
  readonly harp: Harp;
  /** Key of the song, or null where none is given. */
  readonly key: KeyName | null;
  readonly holes: readonly MapHole[];
}

/** How {@link mapReport} looks at a harp. */
export interface MapOptions {
  /** Key of the song; default none, and then no degrees are given. */
  readonly key?: Key;
  /** Whether the harp is half-valved; default false. */
  readonly valved?: boolean;
}

/**
 * Every hole of a harp with its natural notes, bends and overbends, and their degrees in a song's key.
 *
 */
export function mapReport(harp: Harp, options: MapOptions = {}): MapReport {
  const { key, valved = false } = options;
  const all = soundings(harp, { level: 'overbends', valved });
  return {
    harp,
    key: key?.name ?? null,
    holes: harp.holes.map(({ hole }) => ({
      hole,
      soundings: all
        .filter((sounding) => sounding.hole === hole)
        .sort((a, b) => ORDER.indexOf(a.technique) - ORDER.indexOf(b.technique))
        .map(({ pitch, ...how }) => ({
          breath: how.breath,
          technique: how.technique,
          depth: how.depth,
          tab: formatSounding(how),
          pitch,
          note: key ? noteNameWithOctave(pitch, { key }) : nameOnHarp(harp, pitch),
          frequency: Math.round(frequency(pitch) * 1000) / 1000,
          ...(key && { degree: degreeAbove(toPitchClass(pitch), key.pitchClass) }),
        })),
    })),
  };
}

const ORDER: readonly Technique[] = ['natural', 'bend', 'valved-bend', 'overblow', 'overdraw'];

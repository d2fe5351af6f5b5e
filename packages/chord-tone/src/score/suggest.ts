import { type Harp, type Sounding, soundings, type TechniqueLevel } from '@reedplate/layout';
import {
  type Chord,
  type ChordDegree,
  HIGHEST_MIDI,
  LOWEST_MIDI,
  toPitchClass,
} from '@reedplate/pitch';
import { formatSounding, type TabDialectId } from '@reedplate/tab';
import { spelledPitch } from '../spelled-pitch.js';
import type { Suggestion } from './score-types.js';

/** The harp at hand, for suggestions as tab. */
export interface SuggestOptions {
  /** Default none: suggestions are notes alone. */
  readonly harp?: Harp;
  /** What the player can do; default `bends`. */
  readonly level?: TechniqueLevel;
  /** Default `sign`. */
  readonly dialect?: TabDialectId;
}

/** Suggests a tone of a chord near a pitch; `undefined` where the harp has none. */
export type Suggest = (chord: Chord, pitch: number) => Suggestion | undefined;

/** Where to land, the best first. Common practice. */
const LANDING_DEGREES: ReadonlySet<ChordDegree> = new Set(['1', 'b3', '3', 'b7', '7']);

/** Prepares suggestions on a harp, each looked for once. */
export function suggester({ harp, level = 'bends', dialect = 'sign' }: SuggestOptions): Suggest {
  const playable = harp === undefined ? undefined : easiestByPitch(soundings(harp, { level }));
  const known = new Map<Chord, Map<number, Suggestion | undefined>>();
  return (chord, pitch) => {
    const ofChord = known.get(chord) ?? new Map<number, Suggestion | undefined>();
    known.set(chord, ofChord);
    if (!ofChord.has(pitch)) ofChord.set(pitch, nearest(chord, pitch, playable, dialect));
    return ofChord.get(pitch);
  };
}

/** Natural notes come first where a pitch can be had in several ways, then the lower hole. */
function easiestByPitch(all: readonly Sounding[]): ReadonlyMap<number, Sounding> {
  const easiest = new Map<number, Sounding>();
  for (const sounding of all) {
    const before = easiest.get(sounding.pitch);
    if (before === undefined || (before.depth > 0 && sounding.depth === 0)) {
      easiest.set(sounding.pitch, sounding);
    }
  }
  return easiest;
}

/** Farthest that a suggestion lies from the note played, in semitones. */
const FARTHEST = 36;

/** The nearest root, third or seventh that can be played; of two as near, the lower. */
function nearest(
  chord: Chord,
  pitch: number,
  playable: ReadonlyMap<number, Sounding> | undefined,
  dialect: TabDialectId,
): Suggestion | undefined {
  const tones = chord.tones.filter(({ degree }) => LANDING_DEGREES.has(degree));
  for (const candidate of outwardFrom(pitch)) {
    const tone = tones.find(({ pitchClass }) => pitchClass === toPitchClass(candidate));
    const sounding = playable?.get(candidate);
    if (tone === undefined || (playable !== undefined && sounding === undefined)) continue;
    return Object.freeze({
      pitch: candidate,
      name: spelledPitch(candidate, tone.name),
      degree: tone.degree,
      sounding: sounding ?? null,
      tab: sounding === undefined ? null : formatSounding(sounding, { dialect }),
    });
  }
  return undefined;
}

/** Pitches from one outward, the lower of two as far first. */
function outwardFrom(pitch: number): readonly number[] {
  const away = Array.from({ length: FARTHEST }, (_, index) => index + 1);
  const all = [pitch, ...away.flatMap((semitones) => [pitch - semitones, pitch + semitones])];
  return all.filter((candidate) => candidate >= LOWEST_MIDI && candidate <= HIGHEST_MIDI);
}

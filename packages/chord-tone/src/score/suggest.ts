import {
  type Harp,
  type Sounding,
  soundings,
  TECHNIQUE_LEVELS,
  type TechniqueLevel,
} from '@reedplate/layout';
import {
  type Chord,
  type ChordDegree,
  type ChordTone,
  HIGHEST_MIDI,
  LOWEST_MIDI,
  requireOneOf,
  toPitchClass,
} from '@reedplate/pitch';
import { formatSounding, TAB_DIALECT_IDS, type TabDialectId } from '@reedplate/tab';
import { spelledPitch } from '../spelled-pitch.js';
import type { Suggestion } from './score-types.js';

/** The harp at hand, for suggestions as tab. */
export interface SuggestOptions {
  /** Default none: suggestions are notes alone. */
  readonly harp?: Harp;
  /**
   * What the player can do; default `bends`, which most who score a take can (design choice): a
   * suggestion is no help where it cannot be played.
   */
  readonly level?: TechniqueLevel;
  /** Default `sign`. */
  readonly dialect?: TabDialectId;
}

/** Suggests a tone of a chord near a pitch; null where the harp has none. */
export type Suggest = (chord: Chord, pitch: number) => Suggestion | null;

/** Where to land, the best first. Common practice. */
const LANDING_DEGREES: ReadonlySet<ChordDegree> = new Set(['1', 'b3', '3', 'b7', '7']);

/** Prepares suggestions on a harp, each looked for once. */
export function suggester({ harp, level = 'bends', dialect = 'sign' }: SuggestOptions): Suggest {
  // Asked for wrongly, neither would be met on a take without remarks.
  requireOneOf(level, TECHNIQUE_LEVELS, { what: 'a technique level' });
  requireOneOf(dialect, TAB_DIALECT_IDS, { what: 'a dialect of tablature' });
  const playable = harp === undefined ? undefined : easiestByPitch(soundings(harp, { level }));
  const known = new Map<Chord, Map<number, Suggestion | null>>();
  return (chord, pitch) => {
    const ofChord = known.get(chord) ?? new Map<number, Suggestion | null>();
    if (ofChord.size === 0) known.set(chord, ofChord);
    const before = ofChord.get(pitch);
    if (before !== undefined) return before;
    const suggestion = nearest(chord, pitch, playable, dialect);
    ofChord.set(pitch, suggestion);
    return suggestion;
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

/** The nearest root, third or seventh that can be played; of two as near, the easier, the lower. */
function nearest(
  chord: Chord,
  pitch: number,
  playable: ReadonlyMap<number, Sounding> | undefined,
  dialect: TabDialectId,
): Suggestion | null {
  const tones = chord.tones.filter(({ degree }) => LANDING_DEGREES.has(degree));
  const isTone = (candidate: number): boolean =>
    tones.some(({ pitchClass }) => pitchClass === toPitchClass(candidate));
  const depthOf = (candidate: number): number => playable?.get(candidate)?.depth ?? 0;
  for (let away = 0; away <= FARTHEST; away += 1) {
    const [best] = [pitch - away, pitch + away]
      .filter((candidate) => candidate >= LOWEST_MIDI && candidate <= HIGHEST_MIDI)
      .filter((candidate) => isTone(candidate) && (playable?.has(candidate) ?? true))
      .sort((a, b) => depthOf(a) - depthOf(b) || a - b);
    const tone = tones.find(({ pitchClass }) => pitchClass === toPitchClass(best ?? 0));
    if (best === undefined || tone === undefined) continue;
    return makeSuggestion(best, tone, playable?.get(best), dialect);
  }
  return null;
}

function makeSuggestion(
  pitch: number,
  tone: ChordTone,
  sounding: Sounding | undefined,
  dialect: TabDialectId,
): Suggestion {
  return Object.freeze({
    pitch,
    name: spelledPitch(pitch, tone.name),
    degree: tone.degree,
    sounding: sounding ?? null,
    tab: sounding === undefined ? null : formatSounding(sounding, { dialect }),
  });
}

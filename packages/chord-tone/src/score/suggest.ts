import {
  type HarpLike,
  type PlayerLike,
  type Sounding,
  soundings,
  toPlayer,
} from '@reedplate/layout';
import {
  type Chord,
  type ChordDegree,
  type ChordTone,
  HIGHEST_MIDI,
  LOWEST_MIDI,
  requireOneOf,
} from '@reedplate/pitch';
import { formatSounding, TAB_DIALECT_IDS, type TabDialectId } from '@reedplate/tab';
import { spelledPitch } from '../spelled-pitch.js';
import type { Suggestion } from './score-types.js';

/** The harp at hand, for suggestions as tab. */
export interface SuggestOptions {
  /** Default none: suggestions are notes alone. */
  readonly harp?: HarpLike;
  /**
   * Who plays, by a level or as a `Player`; default `bends`, which most who score a take can (design choice): a
   * suggestion is no help where it cannot be played.
   */
  readonly level?: PlayerLike;
  /** Default `plus-minus`. */
  readonly dialect?: TabDialectId;
}

/** Suggests a tone of a chord near a pitch; null where the harp has none. */
export type Suggest = (chord: Chord, pitch: number) => Suggestion | null;

/** Where to land, the best first. Common practice. */
const LANDING_DEGREES: ReadonlySet<ChordDegree> = new Set(['1', 'b3', '3', 'b7', '7']);

/** Prepares suggestions on a harp, whose soundings are looked for once. */
export function suggester({
  harp,
  level = 'bends',
  dialect = 'plus-minus',
}: SuggestOptions): Suggest {
  // Asked for wrongly, neither would be met on a take without remarks.
  toPlayer(level);
  requireOneOf(dialect, TAB_DIALECT_IDS, { what: 'a dialect of tablature' });
  const playable = harp === undefined ? undefined : easiestByPitch(soundings(harp, { level }));
  return (chord, pitch) => {
    const best = easiestTone(chord, pitch, playable);
    return best === undefined ? null : makeSuggestion(best, playable?.get(best.pitch), dialect);
  };
}

/** Unbent notes come first where a pitch can be had in several ways, then the lower hole. */
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

/** A tone of a chord in an octave. */
interface PlacedTone {
  readonly pitch: number;
  readonly tone: ChordTone;
}

/** The root, third or seventh that costs least to go to from a pitch. */
function easiestTone(
  chord: Chord,
  from: number,
  playable: ReadonlyMap<number, Sounding> | undefined,
): PlacedTone | undefined {
  let best: PlacedTone | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const tone of chord.tones) {
    if (!LANDING_DEGREES.has(tone.degree)) continue;
    for (let pitch = tone.pitchClass; pitch <= HIGHEST_MIDI; pitch += OCTAVE) {
      if (pitch < LOWEST_MIDI || (playable !== undefined && !playable.has(pitch))) continue;
      const cost = costOf({ pitch, tone }, from, playable?.get(pitch));
      if (cost < least) [best, least] = [{ pitch, tone }, cost];
    }
  }
  return best;
}

const OCTAVE = 12;

/**
 * What makes a suggestion harder than it need be, in semitones of distance: a bend or overbend, a tone
 * that is not the root, a hole at the edge of the harp. Design choice, no source.
 */
const COST = Object.freeze({ bent: 12, notRoot: 2.5, edge: 3, lowHole: 2, highHole: 7 });

function costOf({ pitch, tone }: PlacedTone, from: number, sounding: Sounding | undefined): number {
  // A note that is right already is to be kept.
  if (pitch === from) return 0;
  const isBent = sounding !== undefined && sounding.depth > 0;
  const isEdge =
    sounding !== undefined && (sounding.hole < COST.lowHole || sounding.hole >= COST.highHole);
  return (
    Math.abs(pitch - from) +
    (isBent ? COST.bent : 0) +
    (tone.degree === '1' ? 0 : COST.notRoot) +
    (isEdge ? COST.edge : 0)
  );
}

function makeSuggestion(
  { pitch, tone }: PlacedTone,
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

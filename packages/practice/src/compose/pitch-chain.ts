import type { Sounding } from '@reedplate/layout';
import { itemAt, toPitchClass } from '@reedplate/pitch';
import type { MoveEffort } from '@reedplate/playability';
import { techniqueCost } from '../path-cost.js';
import type { Chain, Rule } from './chain.js';
import type { LineEnding, MustHold } from './constraints.js';
import { type MelodyModel, melodyWeight } from './melody-model.js';
import { type NotePlace, tonesOf } from './note-place.js';

/** A phrase to find pitches for. */
export interface PitchFrame {
  readonly notes: readonly NotePlace[];
  /** Whether a chorus ends with it. */
  readonly isLast: boolean;
  readonly bars: number;
  readonly soundings: readonly Sounding[];
  readonly tonic: number;
  readonly model: MelodyModel;
  readonly secondsPerTick: number;
  readonly moves: MoveEffort;
  /** What it repeats; `undefined` where it is new. */
  readonly motif?: Motif | undefined;
}

/** A phrase that comes again: its notes, and how many semitones each may move at most. */
export interface Motif {
  readonly soundings: readonly Sounding[];
  readonly within: number;
}

/** The soundings of a phrase as a chain: weights by the model, what must hold as rules. */
export function pitchChain(frame: PitchFrame, must: MustHold): Chain {
  const { notes, soundings } = frame;
  const moves = soundings.map((before) =>
    soundings.map((to) => moveLiking(before, to, frame, must)),
  );
  const first = soundings.map(({ pitch }) =>
    melodyWeight(frame.model, frame.tonic, undefined, pitch),
  );
  const likings = notes.map((note, place) =>
    soundings.map((sounding) => likingOf(note, place, sounding, frame, must)),
  );
  return {
    options: notes.map(() => soundings.length),
    weight: (place, before, option) => {
      const ways = before === -1 ? first : itemAt(moves, before);
      return itemAt(itemAt(likings, place), option) * itemAt(ways, option);
    },
    rules: [...resolveRules(frame, must), ...effortRules(frame, must)],
  };
}

/** A sounding that costs this much by its technique is half as likely as an unbent note. Our own choice. */
const EASY = 4;

/** Liking of a sounding after another; the same pitch again is played in the same way. */
function moveLiking(
  before: Sounding,
  to: Sounding,
  { model, tonic }: PitchFrame,
  { leap }: MustHold,
): number {
  const width = Math.abs(to.pitch - before.pitch);
  if (width > leap || (width === 0 && to !== before)) return 0;
  return melodyWeight(model, tonic, before.pitch, to.pitch);
}

/** Liking of a sounding at a note, whatever comes before; 0 where a landing or the ending forbids it. */
function likingOf(
  { chord, landings }: NotePlace,
  place: number,
  sounding: Sounding,
  { notes, isLast, model, motif }: PitchFrame,
  must: MustHold,
): number {
  const pitchClass = toPitchClass(sounding.pitch);
  if (must.changes && !landings.every((tones) => tones.has(pitchClass))) return 0;
  const ends = isLast && place === notes.length - 1;
  if (ends && !endsOn(must.ending, chord, pitchClass)) return 0;
  const isTone = chord !== null && tonesOf(chord).has(pitchClass);
  const easy = EASY / (EASY + techniqueCost(sounding));
  return easy * (isTone ? model.chordTone : 1) * likenessOf(sounding, motif, place);
}

/** A note that is moved is half as likely for each semitone that it moves. Our own choice. */
const MOVED = 1 / 2;

/** How like a note is to the one that it repeats; what is not moved is played in the same way. */
function likenessOf(sounding: Sounding, motif: Motif | undefined, place: number): number {
  const before = motif?.soundings[place];
  if (motif === undefined || before === undefined) return 1;
  const moved = Math.abs(sounding.pitch - before.pitch);
  if (moved === 0 && sounding !== before) return 0;
  return moved > motif.within ? 0 : MOVED ** moved;
}

function endsOn(ending: LineEnding, chord: NotePlace['chord'], pitchClass: number): boolean {
  if (ending === 'any' || chord === null) return true;
  const tones = ending === 'root' ? chord.tones.slice(0, 1) : chord.tones;
  return tones.some((tone) => tone.pitchClass === pitchClass);
}

/** So many notes in a row, and no more, that are no chord tones. */
function resolveRules({ notes, soundings }: PitchFrame, { resolve }: MustHold): readonly Rule[] {
  if (resolve === Infinity) return [];
  const isTone = notes.map(({ chord }) => {
    const tones = chord === null ? undefined : tonesOf(chord);
    return soundings.map(({ pitch }) => tones?.has(toPitchClass(pitch)) ?? true);
  });
  return [
    {
      states: resolve + 1,
      start: 0,
      next: (others, place, option) => {
        if (isTone[place]?.[option]) return 0;
        return others + 1 > resolve ? undefined : others + 1;
      },
      ends: (others) => others === 0,
    },
  ];
}

/** Effort is counted in halves of a point, each move rounded up, so that a bound always holds. */
const PARTS = 2;

function effortRules(frame: PitchFrame, { effort }: MustHold): readonly Rule[] {
  if (effort === undefined) return [];
  const { notes, soundings, bars, secondsPerTick, moves } = frame;
  const most = Math.floor(effort * bars * PARTS);
  const kept = new Map<number, number>();
  const partsOf = (place: number, before: number, option: number): number => {
    const name = (place * soundings.length + before + 1) * soundings.length + option;
    const known = kept.get(name);
    if (known !== undefined) return known;
    const from = soundings[before] ?? null;
    const ticks = itemAt(notes, place).start - (notes[place - 1]?.start ?? 0);
    const points = moves(from, soundings[option] as Sounding, ticks * secondsPerTick);
    const parts = Math.ceil(points * PARTS);
    kept.set(name, parts);
    return parts;
  };
  return [
    {
      states: most + 1,
      start: 0,
      next: (spent, place, option, before) => {
        const after = spent + partsOf(place, before, option);
        return after > most ? undefined : after;
      },
      ends: () => true,
    },
  ];
}

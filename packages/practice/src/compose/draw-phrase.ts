import type { Sounding } from '@reedplate/layout';
import { itemAt, type Random } from '@reedplate/pitch';
import type { Steps } from '@reedplate/playability';
import { type Draws, drawChain, laySteps } from './chain.js';
import { MUST_HOLD, type MustHold, NOTHING_HELD } from './constraints.js';
import { notePlaces } from './note-place.js';
import type { PhrasePlace } from './phrases-of.js';
import { type Motif, type PitchFrame, pitchChain } from './pitch-chain.js';
import type { Beat } from './rhythm.js';

/** What every phrase is drawn from. */
export interface PhraseGround extends Omit<PitchFrame, 'notes' | 'isLast' | 'bars' | 'motif'> {
  /** A rhythm for a phrase of so many bars; `undefined` where the cells give none. */
  readonly drawRhythm: (bars: number) => readonly Beat[] | undefined;
  readonly must: MustHold;
  readonly random: Random;
}

/** A phrase with its pitches: for each of its places the soundings of its notes. */
export interface DrawnPhrase {
  readonly beats: readonly Beat[];
  readonly soundings: readonly (readonly Sounding[])[];
}

/** Rhythms tried before no line is said to satisfy what must hold. */
const RHYTHMS_TRIED = 12;

/**
 * Draws one phrase for all the places where it is played: a rhythm, then the pitches of the first place;
 * at each of the others it comes again, over other chords with notes moved by a tone, or by more where
 * they ask for it. What must hold always holds; where no pitches fit a rhythm another is drawn.
 *
 * @returns the phrase, or the names of what cannot hold together
 */
export function* drawPhrase(
  places: readonly PhrasePlace[],
  ground: PhraseGround,
): Steps<DrawnPhrase | readonly string[]> {
  let conflict: readonly string[] = [];
  for (let time = 0; time < RHYTHMS_TRIED; time += 1) {
    const beats = ground.drawRhythm(itemAt(places, 0).bars);
    if (beats === undefined) return ['density', 'cells'];
    const soundings = yield* drawPlaces(beats, places, ground);
    if (soundings !== undefined) return { beats, soundings };
    if (conflict.length === 0) conflict = yield* conflictIn(beats, places, ground);
  }
  return conflict;
}

function* drawPlaces(
  beats: readonly Beat[],
  places: readonly PhrasePlace[],
  ground: PhraseGround,
): Steps<DrawnPhrase['soundings'] | undefined> {
  const drawn: (readonly Sounding[])[] = [];
  for (const place of places) {
    const [first] = drawn;
    const draws = yield* first === undefined
      ? drawsOf(beats, place, ground, ground.must)
      : drawsNear(first, beats, [itemAt(places, 0), place], ground);
    if (draws === undefined) return undefined;
    drawn.push(drawSoundings(draws, ground.random));
  }
  return drawn;
}

/** Semitones that a note may move where a phrase comes again over other chords, the fewest that do tried first. */
const MOVES = [2, 3, 4, 5, 7, 12, 127] as const;

/** Draws of a phrase that comes again: note for note over the same chords, else moved as they ask. */
function* drawsNear(
  soundings: readonly Sounding[],
  beats: readonly Beat[],
  [first, place]: readonly [PhrasePlace, PhrasePlace],
  ground: PhraseGround,
): Steps<Drawable | undefined> {
  for (const within of chordsOf(first) === chordsOf(place) ? [0, ...MOVES] : MOVES) {
    const draws = yield* drawsOf(beats, place, ground, ground.must, { soundings, within });
    if (draws !== undefined) return draws;
  }
  return undefined;
}

/** The chords of a place with when they begin, counted from its beginning. */
function chordsOf({ start, spans }: PhrasePlace): string {
  return spans
    .map((span) => `${Math.max(0, span.start - start)} ${span.chord?.symbol ?? 'N.C.'}`)
    .join(', ');
}

interface Drawable {
  readonly draws: Draws;
  readonly soundings: readonly Sounding[];
}

function drawSoundings({ draws, soundings }: Drawable, random: Random): readonly Sounding[] {
  return drawChain(draws, random).map((option) => itemAt(soundings, option));
}

function* drawsOf(
  beats: readonly Beat[],
  place: PhrasePlace,
  ground: PhraseGround,
  must: MustHold,
  motif?: Motif,
): Steps<Drawable | undefined> {
  const { lowest, highest } = must.range;
  const soundings = ground.soundings.filter(({ pitch }) => pitch >= lowest && pitch <= highest);
  if (soundings.length === 0) return undefined;
  const { isLast, bars } = place;
  const notes = notePlaces(beats, place);
  const chain = pitchChain({ ...ground, soundings, notes, isLast, bars, motif }, must);
  const draws = yield* laySteps(chain);
  return draws === undefined ? undefined : { draws, soundings };
}

/**
 * The names of what conflicts: none of them can be let go without the rest being possible. Each is tried
 * without in turn, and stays out where the rest is still impossible.
 */
function* conflictIn(
  beats: readonly Beat[],
  places: readonly PhrasePlace[],
  ground: PhraseGround,
): Steps<readonly string[]> {
  function* isPossible(must: MustHold): Steps<boolean> {
    for (const place of places) {
      if ((yield* drawsOf(beats, place, ground, must)) === undefined) return false;
    }
    return true;
  }
  let must = ground.must;
  const needed: string[] = [];
  for (const name of MUST_HOLD) {
    const without: MustHold = { ...must, [name]: NOTHING_HELD[name] };
    if (yield* isPossible(without)) needed.push(name);
    else must = without;
  }
  // Without any of them the harp still has nothing at this level.
  return needed.length === 0 ? ['level'] : needed;
}

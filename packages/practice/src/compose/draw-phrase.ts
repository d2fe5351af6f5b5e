import type { Sounding } from '@reedplate/layout';
import type { Random } from '@reedplate/pitch';
import { type Draws, drawChain, layDraws } from './chain.js';
import { MUST_HOLD, type MustHold, NOTHING_HELD } from './constraints.js';
import { notePlaces } from './note-place.js';
import type { PhrasePlace } from './phrases-of.js';
import { type PitchFrame, pitchChain } from './pitch-chain.js';
import type { Beat } from './rhythm.js';

/** What every phrase is drawn from. */
export interface PhraseGround extends Omit<PitchFrame, 'notes' | 'lastOf' | 'bars'> {
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
 * Draws one phrase for all the places where it is played: a rhythm, then the pitches. What must hold always
 * holds; where no pitches fit a rhythm another is drawn.
 *
 * @returns the phrase, or the names of what cannot hold together
 */
export function drawPhrase(
  places: readonly PhrasePlace[],
  ground: PhraseGround,
): DrawnPhrase | readonly string[] {
  let conflict: readonly string[] = [];
  for (let time = 0; time < RHYTHMS_TRIED; time += 1) {
    const beats = ground.drawRhythm(places[0]?.bars ?? 0);
    if (beats === undefined) return ['density', 'cells'];
    const drawn = drawSoundings(beats, places, ground, ground.must);
    if (drawn !== undefined) return { beats, soundings: drawn };
    if (conflict.length === 0) conflict = conflictIn(beats, places, ground);
  }
  return conflict;
}

function drawSoundings(
  beats: readonly Beat[],
  places: readonly PhrasePlace[],
  ground: PhraseGround,
  must: MustHold,
): DrawnPhrase['soundings'] | undefined {
  const together = must.plan ? [places] : places.map((place) => [place]);
  const all = together.map((some) => drawsOf(beats, some, ground, must));
  if (all.some((each) => each === undefined)) return undefined;
  const drawn = all.map((each) => {
    const { draws, soundings } = each as Drawable;
    return drawChain(draws, ground.random).map((option) => soundings[option] as Sounding);
  });
  return places.map((_, at) => (must.plan ? drawn[0] : drawn[at]) ?? []);
}

interface Drawable {
  readonly draws: Draws;
  readonly soundings: readonly Sounding[];
}

function drawsOf(
  beats: readonly Beat[],
  places: readonly PhrasePlace[],
  ground: PhraseGround,
  must: MustHold,
): Drawable | undefined {
  const { lowest, highest } = must.range;
  const soundings = ground.soundings.filter(({ pitch }) => pitch >= lowest && pitch <= highest);
  if (soundings.length === 0) return undefined;
  const notes = notePlaces(beats, places);
  const lastOf = places.map(({ isLast }) => isLast);
  const bars = places[0]?.bars ?? 0;
  const draws = layDraws(pitchChain({ ...ground, soundings, notes, lastOf, bars }, must));
  return draws === undefined ? undefined : { draws, soundings };
}

/**
 * The names of what conflicts: none of them can be let go without the rest being possible. Each is tried
 * without in turn, and stays out where the rest is still impossible.
 */
function conflictIn(
  beats: readonly Beat[],
  places: readonly PhrasePlace[],
  ground: PhraseGround,
): readonly string[] {
  let must = ground.must;
  const needed: string[] = [];
  for (const name of MUST_HOLD) {
    const without: MustHold = { ...must, [name]: NOTHING_HELD[name] };
    if (drawSoundings(beats, places, ground, without) === undefined) must = without;
    else needed.push(name);
  }
  // Without any of them the harp still has nothing at this level.
  return needed.length === 0 ? ['level'] : needed;
}

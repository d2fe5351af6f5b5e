import type { TimedNote } from '@reedplate/line';
import { type Chord, itemAt, midi, type Random } from '@reedplate/pitch';
import type { Beat } from './beats.js';
import type { BassFigure } from './groove.js';
import { partTicks } from './pattern.js';

/** The range of a bass of four strings as it is played in a band. */
export const BASS_RANGE = Object.freeze({ lowest: midi('E1'), highest: midi('G3') });

const OCTAVE = 12;
const VELOCITY = 92;
const WEAK_VELOCITY = 78;

/** A note of a figure: part of the beat, and semitones above the root. */
type FigureNote = readonly [part: number, above: number];

/**
 * The bass of a band: a figure beat by beat, its root as near as may be to the note before, within
 * {@link BASS_RANGE} and with no leap over an octave. Before another chord it comes from a half step above or
 * below. Common practice, no source.
 */
export function playBass(
  beats: readonly Beat[],
  figure: BassFigure,
  random: Random,
): readonly TimedNote[] {
  let before: number | undefined;
  let root: number | undefined;
  return beats.flatMap((beat) => {
    const { chord, underChord, start, ticks } = beat;
    if (chord === null) return [];
    if (underChord === 0 || root === undefined) root = rootNear(chord, before);
    const notes = figureAt(beat, chord, figure, random);
    const places = partTicks(2, ticks);
    return notes.map(([part, above], at) => {
      const from = itemAt(places, part);
      const following = notes[at + 1];
      const to = following === undefined ? ticks : itemAt(places, following[0]);
      before = reach((root as number) + above, before);
      const velocity = part === 0 && beat.inBar % 2 === 0 ? VELOCITY : WEAK_VELOCITY;
      return {
        start: start + from,
        duration: to - from,
        pitch: before,
        velocity,
      };
    });
  });
}

/** The root of a chord nearest to a pitch, low enough to walk up from; the lowest at the beginning. */
function rootNear(chord: Chord, near: number | undefined): number {
  const { lowest } = BASS_RANGE;
  const root = lowest + ((rootOf(chord) - lowest + 10 * OCTAVE) % OCTAVE);
  const high = root + OCTAVE;
  if (near === undefined || high + OCTAVE > BASS_RANGE.highest) return root;
  return Math.abs(high - near) < Math.abs(root - near) ? high : root;
}

/** A pitch within the range, and no more than an octave from the one before, by octaves. */
function reach(pitch: number, before: number | undefined): number {
  const { lowest, highest } = BASS_RANGE;
  const least = before === undefined ? lowest : Math.max(lowest, before - OCTAVE);
  const most = before === undefined ? highest : Math.min(highest, before + OCTAVE);
  let within = pitch;
  while (within < least) within += OCTAVE;
  while (within > most) within -= OCTAVE;
  return within;
}

const rootOf = ({ tones }: Chord): number => itemAt(tones, 0).pitchClass;

function figureAt(
  beat: Beat,
  chord: Chord,
  figure: BassFigure,
  random: Random,
): readonly FigureNote[] {
  const { next, underChord } = beat;
  const approach =
    next !== undefined && underChord > 0 ? approachTo(next, chord, random) : undefined;
  return FIGURES[figure](chord, underChord, approach);
}

/** The notes of a beat of a figure, by how many beats its chord has lasted. */
type FigureOf = (
  chord: Chord,
  underChord: number,
  approach: number | undefined,
) => readonly FigureNote[];

const FIGURES: Readonly<Record<BassFigure, FigureOf>> = {
  walk: (chord, underChord, approach) => [[0, approach ?? walkAt(chord, underChord)]],
  'two-beat': (chord, underChord, approach) => {
    if (underChord % 2 === 1) return approach === undefined ? [] : [[0, approach]];
    return [[0, underChord % 4 === 0 ? 0 : intervalsOf(chord).fifth]];
  },
  boogie: (chord, underChord, approach) => {
    const { third, fifth, top } = intervalsOf(chord);
    const step = approach ?? itemAt([0, third, fifth, top], underChord % 4);
    return bothParts(step, step);
  },
  eighths: (chord, underChord, approach) =>
    bothParts(approach ?? 0, approach ?? (underChord % 4 === 3 ? intervalsOf(chord).fifth : 0)),
  syncopated: (chord, underChord, approach) => {
    if (underChord % 2 === 0) return [[0, underChord % 4 === 0 ? 0 : OCTAVE]];
    return [[1, approach ?? intervalsOf(chord).fifth]];
  },
};

function bothParts(first: number, second: number): readonly FigureNote[] {
  return [
    [0, first],
    [1, second],
  ];
}

/** Semitones above this chord's root of a half step below or above the root of the next. */
function approachTo(next: Chord, chord: Chord, random: Random): number {
  const target = (rootOf(next) - rootOf(chord) + OCTAVE) % OCTAVE;
  return target + (random() < BELOW ? -1 : 1);
}

/** How often a walk comes from below. Our own choice. */
const BELOW = 0.7;

function walkAt(chord: Chord, underChord: number): number {
  const { third, fifth, top } = intervalsOf(chord);
  const walk = [0, third, fifth, top, OCTAVE, top, fifth, third];
  return itemAt(walk, underChord % walk.length);
}

/** What a walk steps on: minor chords go up to their seventh, others to their sixth. */
function intervalsOf(chord: Chord): { third: number; fifth: number; top: number } {
  const third = intervalOf(chord, ['3', 'b3', '4', '2']) ?? 4;
  const fifth = intervalOf(chord, ['5', 'b5', '#5']) ?? 7;
  const isMinor = third === 3;
  const top = (isMinor ? intervalOf(chord, ['b7', 'bb7', '6', '7']) : 9) ?? 10;
  return { third, fifth, top };
}

function intervalOf(chord: Chord, degrees: readonly string[]): number | undefined {
  const tone = chord.tones.find(({ degree }) => degrees.includes(degree));
  return tone && (tone.pitchClass - rootOf(chord) + OCTAVE) % OCTAVE;
}

import type { Chord, PitchClass } from '@reedplate/pitch';
import { chordIn, type PhrasePlace } from './phrases-of.js';
import type { Beat } from './rhythm.js';

/** A note of a phrase before it has a pitch, with what the chords ask of it. */
export interface NotePlace extends Beat {
  /** The chord it begins over; null over none. */
  readonly chord: Chord | null;
  /** Tones that it may be where chords change under it or before it; empty where none does. */
  readonly landings: readonly ReadonlySet<PitchClass>[];
}

/** The notes of a rhythm with what the chords at a place of the phrase ask of them. */
export function notePlaces(beats: readonly Beat[], place: PhrasePlace): readonly NotePlace[] {
  return beats.map((beat) => placeOf(beat, beats, place));
}

function placeOf(beat: Beat, beats: readonly Beat[], place: PhrasePlace): NotePlace {
  const at = place.start + beat.start;
  const chord = chordIn(place, at);
  const landings = place.spans.flatMap((span) => {
    const isFirst = beat === beats.find((each) => sounds(each, place, span));
    return isFirst && span.chord !== null ? [tonesOf(span.chord)] : [];
  });
  return { ...beat, chord, landings };
}

/** Whether a note sounds while a chord lasts. */
function sounds(
  { start, duration }: Beat,
  place: PhrasePlace,
  span: PhrasePlace['spans'][number],
): boolean {
  const from = place.start + start;
  return from < span.end && from + duration > span.start;
}

/** Pitch classes of a chord. */
export function tonesOf({ tones }: Chord): ReadonlySet<PitchClass> {
  return new Set(tones.map(({ pitchClass }) => pitchClass));
}

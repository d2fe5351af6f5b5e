import type { TimedNote } from '@reedplate/line';
import { type Chord, midi } from '@reedplate/pitch';
import type { Beat } from './beats.js';

/** Lowest note of a voicing: each pitch class has one place in the octave above, so that voices move little. */
const LOWEST = midi('F#3');
/** Part of a beat that a chord is held, short and clear. */
const HELD = 0.5;
const MOST_VOICES = 4;

/** Chords on the backbeat: the second beat, the fourth and so on. Common practice, no source. */
export function comp(beats: readonly Beat[]): readonly TimedNote[] {
  return beats.flatMap(({ start, ticks, chord, inBar, beatsPerBar }) => {
    const isPlayed = beatsPerBar === 1 || inBar % 2 === 1;
    if (chord === null || !isPlayed) return [];
    const duration = Math.round(ticks * HELD);
    return voicingOf(chord).map((pitch) => ({ start, duration, pitch }));
  });
}

/** The tones that tell chords apart; of more than four the root is left to the bass. */
function voicingOf({ tones }: Chord): readonly number[] {
  const kept = tones.length > MOST_VOICES ? tones.slice(1, MOST_VOICES + 1) : tones;
  const pitches = kept.map(({ pitchClass }) => LOWEST + ((pitchClass - LOWEST + 120) % 12));
  return [...new Set(pitches)].sort((a, b) => a - b);
}

import type { TimedNote } from '@reedplate/line';
import { type Chord, midi } from '@reedplate/pitch';
import type { Beat } from './beats.js';

/** Lowest root: the open low string of a bass. */
const LOWEST_ROOT = midi('E1');

/**
 * A walking bass: a note a beat, up the chord to its sixth or seventh and down again; before another
 * chord the semitone below its root. Common practice, no source.
 */
export function walkBass(beats: readonly Beat[]): readonly TimedNote[] {
  return beats.flatMap(({ start, ticks, chord, underChord, next }): readonly TimedNote[] => {
    if (chord === null) return [];
    const walk = walkOf(chord);
    const isApproach = next !== undefined && underChord > 0;
    const pitch = isApproach
      ? rootPitch(next) - 1
      : rootPitch(chord) + (walk[underChord % walk.length] ?? 0);
    return [{ start, duration: ticks, pitch }];
  });
}

function rootPitch({ tones }: Chord): number {
  const root = tones[0]?.pitchClass ?? 0;
  return LOWEST_ROOT + ((root - LOWEST_ROOT + 120) % 12);
}

/** Semitones above the root: up by root, third and fifth to the top, and down. */
function walkOf(chord: Chord): readonly number[] {
  const third = intervalOf(chord, ['3', 'b3', '4', '2']) ?? 4;
  const fifth = intervalOf(chord, ['5', 'b5', '#5']) ?? 7;
  // Minor chords walk to their seventh, others to their sixth, which a dominant shares.
  const isMinor = third === 3;
  const top = (isMinor ? intervalOf(chord, ['b7', 'bb7', '6', '7']) : 9) ?? 10;
  return [0, third, fifth, top, 12, top, fifth, third];
}

function intervalOf({ tones }: Chord, degrees: readonly string[]): number | undefined {
  const root = tones[0]?.pitchClass ?? 0;
  const tone = tones.find(({ degree }) => degrees.includes(degree));
  return tone && (tone.pitchClass - root + 12) % 12;
}

import type { TimedNote } from '@reedplate/line';
import { type Chord, itemAt, midi } from '@reedplate/pitch';
import type { Beat } from './beats.js';
import type { Groove } from './groove.js';
import { partTicks, readPattern } from './pattern.js';

/** Where voicings lie: between the bass and the harmonica. */
export const COMPING_RANGE = Object.freeze({ lowest: midi('E3'), highest: midi('C5') });

const OCTAVE = 12;
const MOST_VOICES = 4;
/** Part of its time that a struck chord sounds: short and clear, and easy to write down. */
const STRUCK = 0.5;
/** The boogie begins with the sixth on every second beat. */
const FIFTH = 7;
const SIXTH = 9;

/**
 * The chords of a band in the rhythm of a groove, each voicing as near to the one before as its tones
 * allow. Silent in a break. Common practice, no source.
 */
export function comp(
  beats: readonly Beat[],
  { comping: { figure, rhythm }, parts }: Pick<Groove, 'comping' | 'parts'>,
): readonly TimedNote[] {
  const pattern = readPattern(rhythm, parts);
  let before: readonly number[] = [];
  return beats.flatMap((beat) => {
    const { chord, start, ticks, inBar, left } = beat;
    if (chord === null) return [];
    const places = partTicks(parts, ticks);
    const strokes = itemAt(pattern, inBar % pattern.length);
    return strokes.flatMap(({ part, velocity }) => {
      const from = itemAt(places, part);
      const step = (places[part + 1] ?? ticks) - from;
      const isHeld = figure === 'held';
      before = figure === 'fifth-and-sixth' ? dyad(chord, beat) : nearestVoicing(chord, before);
      const duration = isHeld ? Math.min(left - from, 2 * ticks - from) : Math.round(step * STRUCK);
      return before.map((pitch) => ({ start: start + from, duration, pitch, velocity }));
    });
  });
}

/** Root and fifth on odd beats, root and sixth on even ones; the fifth of the chord where it is altered. */
function dyad(chord: Chord, { inBar }: Beat): readonly number[] {
  const root = lowestOf(itemAt(chord.tones, 0).pitchClass);
  const altered = chord.tones.find(({ degree }) => degree === 'b5' || degree === '#5');
  const minorSixth = chord.tones.some(({ degree }) => degree === 'b3');
  if (altered !== undefined)
    return [root, root + ((altered.pitchClass - root + 10 * OCTAVE) % OCTAVE)];
  // A minor chord keeps its fifth: the sixth above it would be foreign to most.
  return [root, root + (inBar % 2 === 0 || minorSixth ? FIFTH : SIXTH)];
}

function lowestOf(pitchClass: number): number {
  const { lowest } = COMPING_RANGE;
  return lowest + ((pitchClass - lowest + 10 * OCTAVE) % OCTAVE);
}

/** The inversion that moves least from the voicing before; the lowest at the beginning and on a tie. */
export function nearestVoicing(chord: Chord, before: readonly number[]): readonly number[] {
  const all = inversionsOf(chord);
  const moved = (voicing: readonly number[]): number =>
    voicing.reduce((sum, pitch) => {
      const least = Math.min(...before.map((other) => Math.abs(other - pitch)));
      return sum + (before.length === 0 ? 0 : least);
    }, 0);
  return all.reduce((best, each) => (moved(each) < moved(best) ? each : best));
}

/** Every closed voicing of the tones that tell a chord; of more than four the root is left to the bass. */
function inversionsOf({ tones }: Chord): readonly (readonly number[])[] {
  const kept = tones.length > MOST_VOICES ? tones.slice(1, MOST_VOICES + 1) : tones;
  const classes = [...new Set(kept.map(({ pitchClass }) => pitchClass))];
  const { highest } = COMPING_RANGE;
  return classes
    .map((bottom) => {
      const lowest = lowestOf(bottom);
      return classes
        .map((pitchClass) => lowest + ((pitchClass - bottom + OCTAVE) % OCTAVE))
        .sort((a, b) => a - b);
    })
    .filter((voicing) => itemAt(voicing, -1) <= highest)
    .sort((a, b) => itemAt(a, 0) - itemAt(b, 0));
}

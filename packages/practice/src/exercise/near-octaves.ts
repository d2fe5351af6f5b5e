import type { Chart } from '@reedplate/form';
import type { Harp } from '@reedplate/layout';
import { rootAbove, semitonesOf, tonicOf } from '../phrase/harmony.js';
import { homeTonic } from '../phrase/home-tonic.js';
import type { Reach } from '../phrase/nearest-variant.js';
import type { PhraseNote } from '../phrase/phrase.js';

/** What a note costs that the player has not, in semitones moved: more than a leap of two octaves. */
const NOT_HAD = 30;
/** What a bent note costs: as much as a tritone, so that a line is not bent to be near. */
const BENT = 6;
/** Semitones above the lowest tonic. */
const MIDDLE = 9;
const BEGINNING = 0.01;
const OCTAVES = [-2, -1, 0, 1, 2] as const;

/** A way to a note: its octave, where it lies, and what it costs with all before it. */
interface Way {
  readonly cost: number;
  readonly pitch: number;
  readonly octaves: readonly number[];
}

/**
 * Notes above the roots of chords, each in the octave that moves the line by the fewest semitones in all, found
 * exactly: the seventh of a chord falls by a semitone to the third of the next. What the player has goes before what is near.
 */
export function inNearOctaves(
  notes: readonly PhraseNote[],
  chart: Chart,
  harp: Harp,
  { has, pitches, natural }: Reach,
): readonly PhraseNote[] {
  const unbent = new Set(natural.map(({ pitch }) => pitch));
  const home = homeTonic(harp, tonicOf(chart));
  const [lowest = home, highest = home] = [pitches[0], pitches.at(-1)];
  const within = (pitch: number): boolean => pitch >= lowest && pitch <= highest;
  let ways: readonly Way[] = [{ cost: 0, pitch: home + MIDDLE, octaves: [] }];
  for (const [index, note] of notes.entries()) {
    // Where the line begins is free, but for the middle of the harp before its ends.
    const weight = index === 0 ? BEGINNING : 1;
    const above = home + rootAbove(chart, note.at + chart.pickup) + semitonesOf(note.degree);
    const places = OCTAVES.map((octave) => ({ octave, pitch: above + 12 * octave }));
    const inside = places.filter(({ pitch }) => within(pitch));
    ways = (inside.length > 0 ? inside : places).map(({ octave, pitch }) => {
      const own = unbent.has(pitch) ? 0 : has.has(pitch) ? BENT : NOT_HAD;
      const costFrom = (way: Way): number => way.cost + weight * Math.abs(pitch - way.pitch);
      const best = leastOf(ways, costFrom);
      const cost = costFrom(best) + own;
      return { cost, pitch, octaves: [...best.octaves, octave] };
    });
  }
  const { octaves } = leastOf(ways, ({ cost }) => cost);
  return notes.map((note, at) => ({ ...note, octave: octaves[at] ?? note.octave }));
}

function leastOf(ways: readonly Way[], costOf: (way: Way) => number): Way {
  return ways.reduce((best, way) => (costOf(way) < costOf(best) ? way : best));
}

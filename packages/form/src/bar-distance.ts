import { parseNumeral } from '@reedplate/pitch';
import { type ChordColours, coloursOf } from './quality.js';
import { RECOGNITION_WEIGHTS as WEIGHTS } from './recognition-weights.js';
import { sharesOf } from './shares.js';
import type { FormBar } from './types.js';

/** A chord of a bar as it is compared: its root in semitones above C or above the tonic. */
interface ComparedChord {
  readonly root: number;
  readonly quality: string;
  readonly colours: ChordColours;
}

/** A chord and the part of the bar at which it ends, 0 to 1. */
interface ComparedPart {
  readonly end: number;
  /** Null is no chord. */
  readonly chord: ComparedChord | null;
}

/** A bar as it is compared. */
export type ComparedBar = readonly ComparedPart[];

/** Reads a bar for comparing. */
export function comparedBar(bar: FormBar): ComparedBar {
  const total = sharesOf(bar);
  let before = 0;
  return bar.map(({ numeral, weight }) => {
    before += weight;
    return { end: before / total, chord: numeral === null ? null : comparedChord(numeral) };
  });
}

function comparedChord(numeral: string): ComparedChord {
  const { semitones: root, quality } = parseNumeral(numeral);
  return { root, quality, colours: coloursOf(numeral) };
}

/**
 * How far two bars differ, from 0 for the same chords at the same times to 1 for other roots
 * throughout: the cost of each pair of chords for as long as they sound together.
 *
 * @param tonic semitones by which the roots of `other` are raised
 */
export function barDistance(one: ComparedBar, other: ComparedBar, tonic: number): number {
  return overTime(one, other, (a, b) => chordCost(a, b, tonic));
}

/** Whether some chord of one bar sounds together with a chord of the other on another root. */
export function hasOtherRoots(one: ComparedBar, other: ComparedBar, tonic: number): boolean {
  const differ = (a: ComparedChord, b: ComparedChord): boolean => a.root !== (b.root + tonic) % 12;
  return overTime(one, other, (a, b) => (a && b && differ(a, b) ? 1 : 0)) > 0;
}

type ChordCost = (a: ComparedChord | null, b: ComparedChord | null) => number;

/** Sums a cost over the bar, each pair of chords weighted by the time they share. */
function overTime(one: ComparedBar, other: ComparedBar, cost: ChordCost): number {
  let sum = 0;
  let time = 0;
  let [here, there] = [0, 0];
  while (here < one.length && there < other.length) {
    const [a, b] = [one[here], other[there]] as readonly [ComparedPart, ComparedPart];
    const end = Math.min(a.end, b.end);
    sum += (end - time) * cost(a.chord, b.chord);
    time = end;
    if (a.end <= end) here += 1;
    if (b.end <= end) there += 1;
  }
  return sum;
}

function chordCost(a: ComparedChord | null, b: ComparedChord | null, tonic: number): number {
  if (a === null || b === null) return a === b ? 0 : WEIGHTS.break;
  if (a.root !== (b.root + tonic) % 12) return WEIGHTS.root;
  if (a.quality === b.quality) return 0;
  const { third, fifth, seventh } = a.colours;
  if (contradicts(third, b.colours.third)) return WEIGHTS.third;
  const clashes = contradicts(fifth, b.colours.fifth) || contradicts(seventh, b.colours.seventh);
  return clashes ? WEIGHTS.colour : WEIGHTS.extension;
}

/** A tone that one chord leaves out contradicts nothing. */
function contradicts(a: string | undefined, b: string | undefined): boolean {
  return a !== undefined && b !== undefined && a !== b;
}

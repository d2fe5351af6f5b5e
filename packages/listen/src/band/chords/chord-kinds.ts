import { chordOfNumeral, itemAt } from '@reedplate/pitch';
import { CLASSES } from '../front/chroma.js';

/** A kind of chord by its tones, in semitones above its root; the same tones are the same kind. */
export interface ChordKind {
  readonly tones: readonly { readonly above: number; readonly degree: string }[];
}

/** How much each degree of a chord is heard in the treble, beside its root. Design choice, no source. */
const TREBLE_WEIGHTS: ReadonlyMap<string, number> = new Map([
  ['1', 1],
  ['3', 1],
  ['b3', 1],
  ['5', 0.8],
  ['b5', 0.9],
  ['#5', 0.9],
  ['b7', 0.7],
  ['7', 0.7],
  ['bb7', 0.8],
  ['6', 0.6],
]);
/** Ninths and what lies above. */
const COLOUR_WEIGHT = 0.3;

/**
 * What a bass plays under a chord: its root and fifth. Thirds tell the kind of a chord, and a bass drum that happens to
 * sound one would decide it: they are left to the treble.
 */
const BASS_WEIGHTS: ReadonlyMap<string, number> = new Map([
  ['1', 1],
  ['5', 0.5],
  ['b5', 0.4],
  ['#5', 0.4],
]);

/** A tone's third harmonic sounds a fifth above it. */
const THIRD_HARMONIC = 0.15;

/** The kind of chord that a numeral names. */
export function kindOf(numeral: string): ChordKind {
  const { tones } = chordOfNumeral(numeral, 'C');
  const root = itemAt(tones, 0).pitchClass;
  return {
    tones: tones.map(({ pitchClass, degree }) => ({
      above: (pitchClass - root + 12) % 12,
      degree,
    })),
  };
}

/**
 * What a kind of chord sounds like on each root, treble and bass, each without its mean and of length 1, so that
 * its product with what is heard is their correlation: twelve rows, one after another.
 */
export function templatesOf({ tones }: ChordKind): Float64Array {
  const treble = new Float64Array(12);
  const bass = new Float64Array(12);
  for (const { above, degree } of tones) {
    const weight = TREBLE_WEIGHTS.get(degree) ?? COLOUR_WEIGHT;
    treble[above] = (treble[above] as number) + weight;
    const fifth = (above + 7) % 12;
    treble[fifth] = (treble[fifth] as number) + THIRD_HARMONIC * weight;
    bass[above] = (bass[above] as number) + (BASS_WEIGHTS.get(degree) ?? 0);
  }
  const rows = new Float64Array(12 * CLASSES);
  for (const [half, shape] of [centred(treble), centred(bass)].entries()) {
    for (let root = 0; root < 12; root += 1) {
      for (let above = 0; above < 12; above += 1)
        rows[root * CLASSES + half * 12 + ((root + above) % 12)] = shape[above] as number;
    }
  }
  return rows;
}

function centred(shape: Float64Array): Float64Array {
  const mean = shape.reduce((sum, value) => sum + value, 0) / 12;
  const moved = shape.map((value) => value - mean);
  const size = Math.sqrt(moved.reduce((sum, value) => sum + value * value, 0));
  return moved.map((value) => value / size);
}

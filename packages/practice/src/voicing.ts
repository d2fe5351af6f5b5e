import { type ChordShape, chordShapes, type Target, targetsOf } from '@reedplate/chord-tone';
import { type Harp, type PlayerLike, type Sounding, soundingsAt } from '@reedplate/layout';
import { type Chord, type ChordDegree, itemAt } from '@reedplate/pitch';

/** One sounding, or several on one breath, with their degrees: what a step of a line plays. */
export interface Voicing {
  /** From the low end; at least one. */
  readonly soundings: readonly [Sounding, ...Sounding[]];
  /** Degree of each sounding. */
  readonly degrees: readonly ChordDegree[];
}

/** What is played while a chord lasts, one voicing after another; at least one. */
export type Figure = readonly Voicing[];

/** What a voicing may use. */
export interface VoicingLimits {
  readonly level: PlayerLike;
  /** Lowest and highest MIDI number allowed, both inclusive. */
  readonly lowest: number;
  readonly highest: number;
}

const ROOT: ReadonlySet<ChordDegree> = new Set(['1']);
const THIRDS: ReadonlySet<ChordDegree | null> = new Set<ChordDegree>(['b3', '3']);
/** Thirds and sevenths; the sixth stands in for the seventh where a chord has none. */
const GUIDE_TONES: ReadonlySet<ChordDegree> = new Set(['b3', '3', 'bb7', 'b7', '7', '6']);

/** Ways to sound the root of a chord, or any of its tones where the root cannot be had. */
export function rootVoicings(chord: Chord, harp: Harp, limits: VoicingLimits): readonly Voicing[] {
  return preferring(ROOT, targetsWithin(chord, harp, limits));
}

/** Ways to sound a third or seventh of a chord, or any of its tones where none can be had. */
export function guideToneVoicings(
  chord: Chord,
  harp: Harp,
  limits: VoicingLimits,
): readonly Voicing[] {
  return preferring(GUIDE_TONES, targetsWithin(chord, harp, limits));
}

/** The targets of a chord within limits. */
export function targetsWithin(
  chord: Chord,
  harp: Harp,
  { level, lowest, highest }: VoicingLimits,
): readonly Target[] {
  return targetsOf(chord, harp, { level }).filter(
    ({ sounding }) => sounding.pitch >= lowest && sounding.pitch <= highest,
  );
}

function preferring(
  wanted: ReadonlySet<ChordDegree>,
  targets: readonly Target[],
): readonly Voicing[] {
  const found = targets.filter(({ degree }) => wanted.has(degree));
  return (found.length > 0 ? found : targets).map(single);
}

function single({ sounding, degree }: Target): Voicing {
  return { soundings: [sounding], degrees: [degree] };
}

/**
 * Ways to play a chord together, the best kind that the harp has. Neighbouring holes come first: all
 * tones; the triad; root and third; three tones or more without the root, which the bass plays; third
 * and seventh; any two. Then splits, the narrowest first, since the tongue must block what lies
 * between; then the root alone.
 */
export function chordVoicings(chord: Chord, harp: Harp, limits: VoicingLimits): readonly Voicing[] {
  const usable = chordShapes(chord, harp, { level: limits.level }).filter((shape) =>
    isUsable(shape, limits),
  );
  const best = KINDS.map((kind) => usable.filter(kind)).find((shapes) => shapes.length > 0);
  return best === undefined
    ? rootVoicings(chord, harp, limits)
    : best.map((shape) => shapeVoicing(shape, harp));
}

type Kind = (shape: ChordShape) => boolean;

const isTogether: Kind = ({ gesture }) => gesture !== 'split';
const hasRoot: Kind = ({ lacks }) => !lacks.includes('1');
const hasThird: Kind = ({ tones }) => tones.some(({ degree }) => THIRDS.has(degree));
const hasSeventh: Kind = ({ tones }) =>
  tones.some(({ degree }) => degree !== null && GUIDE_TONES.has(degree) && !THIRDS.has(degree));
const splitOf =
  (width: number): Kind =>
  (shape) =>
    shape.gesture === 'split' && itemAt(shape.holes, -1) - itemAt(shape.holes, 0) + 1 === width;

/** How many different tones of the chord sound. */
function toneCount({ tones }: ChordShape): number {
  return new Set(tones.map(({ degree }) => degree)).size;
}

/** From the best kind of shape down. The order within neighbours is common practice, no source. */
const KINDS: readonly Kind[] = [
  (shape) => isTogether(shape) && shape.completeness === 'complete',
  (shape) => isTogether(shape) && shape.triad,
  (shape) => isTogether(shape) && hasRoot(shape) && hasThird(shape),
  (shape) => isTogether(shape) && toneCount(shape) >= 3,
  (shape) => isTogether(shape) && hasThird(shape) && hasSeventh(shape),
  (shape) => isTogether(shape) && hasRoot(shape),
  isTogether,
  ...[3, 4, 5].map(splitOf),
];

function isUsable(shape: ChordShape, { lowest, highest }: VoicingLimits): boolean {
  const { completeness, tones } = shape;
  const inRange = tones.every(({ pitch }) => pitch >= lowest && pitch <= highest);
  return (
    inRange && toneCount(shape) >= 2 && (completeness === 'complete' || completeness === 'partial')
  );
}

function shapeVoicing({ breath, tones }: ChordShape, harp: Harp): Voicing {
  const soundings = tones.map(
    ({ hole }) => soundingsAt(harp, hole, breath, { level: 'natural' })[0] as Sounding,
  );
  return {
    soundings: soundings as [Sounding, ...Sounding[]],
    degrees: tones.map(({ degree }) => degree as ChordDegree),
  };
}

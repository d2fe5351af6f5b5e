import {
  type Chord,
  type ChordDegree,
  type Key,
  SCALE_DEGREES,
  toPitchClass,
} from '@reedplate/pitch';
import { chordFamily } from '../chord-family.js';
import { roughnessOf } from '../clash.js';
import type { Style } from '../styles.js';
import { CLASS, type ClassIndex } from './note-class.js';

/** Roughness from which an unresolved note is a clash. Design choice, no source. */
const CLASHING = 0.75;

/** What each pitch class is to a chord, before it is known what a note does next. */
export interface ChordTable {
  readonly chord: Chord;
  /** Class of each pitch class where the note does not resolve. */
  readonly resting: readonly ClassIndex[];
  /** 1 for a pitch class that is a tone of the chord and no extension, else 0. */
  readonly tone: readonly number[];
  /** Whether each pitch class is a blue note here, if only when it resolves. */
  readonly blue: readonly boolean[];
}

/** Compiles a chord in a key and style. */
export function compileChord(chord: Chord, key: Key, style: Style): ChordTable {
  const root = chord.tones[0]?.pitchClass ?? 0;
  const toneAt = SCALE_DEGREES.map((_, above) =>
    chord.tones.find(({ pitchClass }) => pitchClass === toPitchClass(root + above)),
  );
  const isTone = (above: number): boolean => {
    const tone = toneAt[above];
    return tone !== undefined && !isExtension(tone.degree);
  };
  const above = (pitchClass: number): number => toPitchClass(pitchClass - root);
  const onRoot = toPitchClass(root - key.pitchClass);
  const pitchClasses = SCALE_DEGREES.map((_, pitchClass) => pitchClass);
  const isBlue = (pitchClass: number): boolean =>
    toneAt[above(pitchClass)] === undefined &&
    isBlueNote({ chord, onRoot, above: above(pitchClass), style });
  return {
    chord,
    tone: pitchClasses.map((pitchClass) => (isTone(above(pitchClass)) ? 1 : 0)),
    blue: pitchClasses.map(
      (pitchClass) => isBlue(pitchClass) || isFlatFifth(pitchClass, key, style),
    ),
    resting: pitchClasses.map((pitchClass) => {
      const tone = toneAt[above(pitchClass)];
      if (tone !== undefined) return classOfTone(tone.degree, chord);
      if (isBlue(pitchClass)) return CLASS.blue;
      return classOfForeign(above(pitchClass), chord, style);
    }),
  };
}

const THIRDS_AND_SEVENTHS: ReadonlySet<ChordDegree> = new Set(['b3', '3', 'bb7', 'b7', '7']);

/**
 * Ninths, elevenths and thirteenths colour a chord also where its symbol names them: over a
 * thirteenth chord nearly every note would else be a chord tone. Common practice.
 */
function isExtension(degree: ChordDegree): boolean {
  return /(?:9|1[13])$/u.test(degree);
}

/** The sixth of a chord without a seventh stands in for it. */
function classOfTone(degree: ChordDegree, { tones }: Chord): ClassIndex {
  if (degree === '1') return CLASS.root;
  if (isExtension(degree)) return CLASS.colour;
  if (THIRDS_AND_SEVENTHS.has(degree)) return CLASS.guideTone;
  const hasSeventh = tones.some((tone) => tone.degree.endsWith('7'));
  return degree === '6' && !hasSeventh ? CLASS.guideTone : CLASS.chordTone;
}

function classOfForeign(above: number, chord: Chord, style: Style): ClassIndex {
  const roughness = roughnessOf(SCALE_DEGREES[above] ?? '1', chord, style);
  if (roughness === 0) return CLASS.colour;
  return roughness >= CLASHING ? CLASS.clash : CLASS.unresolved;
}

interface Placed {
  readonly chord: Chord;
  /** Semitones from the tonic of the key up to the chord's root. */
  readonly onRoot: number;
  /** Semitones from the chord's root up to the note. */
  readonly above: number;
  readonly style: Style;
}

const TONIC = 0;
const FIFTH = 7;
const FLAT_THIRD = 3;
const FLAT_FIFTH = 6;
const FLAT_SEVENTH = 10;

/** The key's flat third and flat seventh over its I and V: the blues' own. Common practice. */
function isBlueNote({ chord, onRoot, above, style }: Placed): boolean {
  if (style === 'bright-major' || (onRoot !== TONIC && onRoot !== FIFTH)) return false;
  const family = chordFamily(chord);
  const isMajor = family === 'major' || family === 'dominant';
  const inKey = toPitchClass(onRoot + above);
  return inKey === FLAT_SEVENTH || (isMajor && inKey === FLAT_THIRD);
}

/** The flat fifth of the key is blue where it moves on, over any chord. Common practice. */
function isFlatFifth(pitchClass: number, key: Key, style: Style): boolean {
  return style !== 'bright-major' && toPitchClass(pitchClass - key.pitchClass) === FLAT_FIFTH;
}

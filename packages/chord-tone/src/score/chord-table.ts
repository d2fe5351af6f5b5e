import {
  type Chord,
  type ChordDegree,
  itemAt,
  type Key,
  SCALE_DEGREES,
  type ScaleDegree,
  toPitchClass,
} from '@reedplate/pitch';
import { chordFamily } from '../chord-family.js';
import {
  CHORD_ROUGHNESS,
  type ChordFamily,
  type ChordRoughness,
  type PlayingStyle,
} from '../styles.js';
import { toneByPitchClass } from '../target.js';
import type { NoteClass } from './note-class.js';

/** Roughness from which an unresolved note is a clash. Design choice, no source. */
const CLASHING = 0.75;

/** What each pitch class is to a chord, before it is known what a note does next. */
export interface ChordTable {
  /** Null where no chord sounds. */
  readonly chord: Chord | null;
  /** Pitch class of its root; −1 without a chord. */
  readonly root: number;
  /** Class of each pitch class where the note does not resolve. */
  readonly resting: readonly NoteClass[];
  /** 1 for a pitch class that is a tone of the chord and no extension, else 0; −1 without a chord. */
  readonly tone: readonly number[];
  /** Whether each pitch class is a blue note here, if only when it resolves. */
  readonly blue: readonly boolean[];
}

/** The table of a chord. */
export interface CompiledChord extends ChordTable {
  readonly chord: Chord;
}

const PITCH_CLASSES = /* @__PURE__ */ SCALE_DEGREES.map((_, pitchClass) => pitchClass);

/** The table of the times at which no chord sounds. */
export const SILENCE: ChordTable = /* @__PURE__ */ (() => ({
  chord: null,
  root: -1,
  resting: PITCH_CLASSES.map((): NoteClass => 'unjudged'),
  tone: PITCH_CLASSES.map(() => -1),
  blue: PITCH_CLASSES.map(() => false),
}))();

/** Compiles a chord in a key and style. */
export function compileChord(chord: Chord, key: Key, style: PlayingStyle): CompiledChord {
  const root = itemAt(chord.tones, 0).pitchClass;
  const toneAt = toneByPitchClass(chord);
  const family = chordFamily(chord);
  const roughness = CHORD_ROUGHNESS[style][family];
  const onRoot = toPitchClass(root - key.pitchClass);
  const aboves = PITCH_CLASSES.map((pitchClass) => toPitchClass(pitchClass - root));
  const isBlue = aboves.map(
    (above, pitchClass) =>
      toneAt[pitchClass] === undefined && isBlueNote({ family, onRoot, above, style }),
  );
  return {
    chord,
    root,
    tone: toneAt.map((tone) => (tone === undefined || isExtension(tone.degree) ? 0 : 1)),
    blue: isBlue.map((blue, pitchClass) => blue || isFlatFifth(pitchClass, key, style)),
    resting: aboves.map((above, pitchClass) => {
      const tone = toneAt[pitchClass];
      if (tone !== undefined) return classOfTone(tone.degree, chord);
      if (isBlue[pitchClass]) return 'blue';
      return classOfForeign(SCALE_DEGREES[above] as ScaleDegree, roughness);
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
function classOfTone(degree: ChordDegree, { tones }: Chord): NoteClass {
  if (degree === '1') return 'root';
  if (isExtension(degree)) return 'colour';
  if (THIRDS_AND_SEVENTHS.has(degree)) return 'guide-tone';
  const hasSeventh = tones.some((tone) => tone.degree.endsWith('7'));
  return degree === '6' && !hasSeventh ? 'guide-tone' : 'chord-tone';
}

function classOfForeign(above: ScaleDegree, roughness: ChordRoughness): NoteClass {
  if (roughness[above] === 0) return 'colour';
  return roughness[above] >= CLASHING ? 'clash' : 'unresolved';
}

interface Placed {
  readonly family: ChordFamily;
  /** Semitones from the tonic of the key up to the chord's root. */
  readonly onRoot: number;
  /** Semitones from the chord's root up to the note. */
  readonly above: number;
  readonly style: PlayingStyle;
}

const TONIC = 0;
const FIFTH = 7;
const FLAT_THIRD = 3;
const FLAT_FIFTH = 6;
const FLAT_SEVENTH = 10;

/** The key's flat third and flat seventh over its I and V: the blues' own. Common practice. */
function isBlueNote({ family, onRoot, above, style }: Placed): boolean {
  if (style === 'major' || (onRoot !== TONIC && onRoot !== FIFTH)) return false;
  const isMajor = family === 'major' || family === 'dominant';
  const inKey = toPitchClass(onRoot + above);
  return inKey === FLAT_SEVENTH || (isMajor && inKey === FLAT_THIRD);
}

/** The flat fifth of the key is blue where it moves on, over any chord. Common practice. */
function isFlatFifth(pitchClass: number, key: Key, style: PlayingStyle): boolean {
  return style !== 'major' && toPitchClass(pitchClass - key.pitchClass) === FLAT_FIFTH;
}

import { ChordType, Interval } from 'tonal';
import { type ChordDegree, degreeOfInterval } from './degree.js';

/** A tone of a chord quality, before the chord has a root. */
export interface QualityTone {
  readonly degree: ChordDegree;
  /** Semitones above the root, 0 to 21. */
  readonly semitones: number;
  /** Diatonic steps above the root, 0 to 12: what the tone's letter follows. */
  readonly steps: number;
}

/** A kind of chord: the suffix that names it and its tones above the root. */
export interface ChordQuality {
  /** Canonical suffix after the root: `` for major, `m`, `7`, `m7b5`. */
  readonly suffix: string;
  readonly tones: readonly QualityTone[];
}

/** Suffixes musicians write more often than the one tonal lists first. Common practice. */
const PREFERRED_SUFFIX: ReadonlyMap<string, string> = new Map([
  ['M', ''],
  ['m/ma7', 'mMaj7'],
  ['6add9', '69'],
  ['Madd9', 'add9'],
  ['alt7', '7alt'],
]);

/** Suffixes musicians write that tonal does not list, or lists for another chord. */
const EXTRA_SUFFIXES: ReadonlyMap<string, string> = new Map([
  ['ø7', 'm7b5'],
  ['min7b5', 'm7b5'],
  ['Maj9', 'maj9'],
  ['major', ''],
  ['minor', 'm'],
  ['min6', 'm6'],
  ['min9', 'm9'],
  ['m7b5', 'm7b5'],
]);

const QUALITIES: ReadonlyMap<string, ChordQuality> = readQualities();

function readQualities(): ReadonlyMap<string, ChordQuality> {
  const bySuffix = new Map<string, ChordQuality>();
  for (const { aliases, intervals } of ChordType.all()) {
    const first = aliases[0] ?? '';
    const suffix = PREFERRED_SUFFIX.get(first) ?? first;
    const quality = Object.freeze({ suffix, tones: Object.freeze(intervals.map(readTone)) });
    for (const alias of [suffix, ...aliases]) {
      if (!bySuffix.has(alias)) bySuffix.set(alias, quality);
    }
  }
  for (const [alias, suffix] of EXTRA_SUFFIXES) {
    const quality = bySuffix.get(suffix);
    if (quality !== undefined) bySuffix.set(alias, quality);
  }
  return bySuffix;
}

function readTone(interval: string): QualityTone {
  return Object.freeze({
    degree: degreeOfInterval(interval),
    semitones: Interval.semitones(interval),
    steps: Number.parseInt(interval, 10) - 1,
  });
}

/** The quality a suffix names, or `undefined`; `♭`, `♯` and brackets are read as in print. */
export function readChordQuality(suffix: string): ChordQuality | undefined {
  if (suffix.length > 24) return undefined;
  const plain = suffix.replaceAll('♭', 'b').replaceAll('♯', '#').replaceAll(/[()]/gu, '');
  return QUALITIES.get(plain);
}

/**
 * Every suffix that {@link parseChord} reads after a root, several for most kinds of chord.
 *
 * @example
 * ```ts
 * import { chordSuffixes } from '@reedplate/pitch';
 *
 * chordSuffixes().includes('m7b5'); // => true
 * ```
 */
export function chordSuffixes(): readonly string[] {
  return [...QUALITIES.keys()];
}

/** Whether a quality has a minor and no major third above its root. */
export function hasMinorThird(quality: ChordQuality): boolean {
  const degrees = new Set(quality.tones.map((tone) => tone.degree));
  return degrees.has('b3') && !degrees.has('3');
}

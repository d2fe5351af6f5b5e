import { asciiSigns } from './accidental.js';
import { CHORD_TYPES } from './chord-types.js';
import { type ChordDegree, readDegree } from './degree.js';

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
  /** Canonical suffix after the root: empty for major, `m`, `7`, `m7b5`. */
  readonly suffix: string;
  readonly tones: readonly QualityTone[];
}

const QUALITIES: ReadonlyMap<string, ChordQuality> = new Map(
  CHORD_TYPES.flatMap(([degrees, suffixes]) => {
    const aliases = suffixes.split(' ');
    const quality = makeQuality(aliases[0] ?? '', degrees);
    return aliases.map((alias): [string, ChordQuality] => [alias, quality]);
  }),
);

function makeQuality(suffix: string, degrees: string): ChordQuality {
  const tones = degrees.split(' ').map((text) => Object.freeze(readTone(text)));
  return Object.freeze({ suffix, tones: Object.freeze(tones) });
}

function readTone(text: string): QualityTone {
  const { semitones, steps } = readDegree(text);
  // The chord of fourths stacks its third an octave up: a tenth is named as the third it is.
  const degree = (text === 'b10' ? 'b3' : text) as ChordDegree;
  return { degree, semitones, steps };
}

/** One suffix for each kind of chord. */
export const CANONICAL_SUFFIXES: ReadonlySet<string> = new Set(
  [...QUALITIES.values()].map((quality) => quality.suffix),
);

const LONGEST_SUFFIX = 24;

/**
 * The quality a suffix names, or `undefined`. Brackets, `♭` and `♯` are read as in print, and so
 * are the many ways to write "minor" and "major": `min`, `mi`, `-`, `Maj`, `ma`, `Δ`, `△`.
 */
export function readChordQuality(suffix: string): ChordQuality | undefined {
  const exact = QUALITIES.get(suffix);
  if (exact !== undefined || suffix.length > LONGEST_SUFFIX) return exact;
  for (const respelled of respellings(suffix)) {
    const quality = QUALITIES.get(respelled);
    if (quality !== undefined) return quality;
  }
  return undefined;
}

const MINOR_WORD = /^(?:minor|min|mi|[-−])/u;
const MAJOR_WORD = /[Mm]ajor|[Mm]aj|ma|M|Δ|\^/u;
/** As the canonical suffixes spell "major", in the order they are tried. */
const MAJOR_SPELLINGS: readonly string[] = ['maj', 'M', 'Maj'];

/** What a suffix may stand for, likeliest first. */
function respellings(suffix: string): readonly string[] {
  const plain = asciiSigns(suffix)
    .replaceAll(/[()]/gu, '')
    .replaceAll('△', 'Δ')
    .replace(/^(?:dominant|dom)(?=\d)/u, '')
    .replace(/^7M$/u, 'maj7')
    .replace('6/9', '69');
  const minor = plain.replace(MINOR_WORD, 'm');
  const major = MAJOR_SPELLINGS.map((spelling) => minor.replace(MAJOR_WORD, spelling));
  return [plain, minor, ...major];
}

/**
 * Every suffix in the dictionary behind {@link parseChord}, several for most kinds of chord.
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

/** Whether a quality has a minor and no major third directly above its root. */
export function hasMinorThird(quality: ChordQuality): boolean {
  const semitones = new Set(quality.tones.map((tone) => tone.semitones));
  return semitones.has(3) && !semitones.has(4);
}

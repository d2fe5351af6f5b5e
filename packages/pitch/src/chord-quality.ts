import { all as tonalChordTypes } from '@tonaljs/chord-type';
import { interval as tonalInterval } from '@tonaljs/pitch-interval';
import { altToAcc } from '@tonaljs/pitch-note';
import { asciiSigns } from './accidental.js';
import type { ChordDegree } from './degree.js';
import { lazily } from './lazily.js';

/** A tone of a chord quality, before the chord has a root. */
export interface QualityTone {
  readonly degree: ChordDegree;
  /** As tonal writes it: `3m`, `7d`, `9M`. */
  readonly interval: string;
  /** Semitones above the root, 0 to 21. */
  readonly semitones: number;
}

/** A kind of chord: the suffix that names it and its tones above the root. */
export interface ChordQuality {
  /** Canonical suffix after the root: empty for major, `m`, `7`, `m7b5`. */
  readonly suffix: string;
  readonly tones: readonly QualityTone[];
}

/** Suffixes that musicians write more often than the one tonal lists first. Common practice. */
const PREFERRED: ReadonlySet<string> = /* @__PURE__ */ new Set([
  '',
  'mMaj7',
  '69',
  'add9',
  '7b9sus4',
]);

/** Suffixes that tonal does not list, each after the one that it does. */
const ADDED: ReadonlyMap<string, string> = /* @__PURE__ */ new Map([['h', 'ø7']]);

/**
 * Suffixes that read as something else after a root: `4` (C4 is a note) and `b9sus` (Cb9sus has
 * the root C♭). The chord of fourths keeps its name, `quartal`.
 */
const LEFT_OUT: ReadonlySet<string> = /* @__PURE__ */ new Set(['4', 'b9sus']);

/** Every suffix of tonal's dictionary, amended as above, with what makes its quality once it is asked for. */
const qualities = /* @__PURE__ */ lazily((): ReadonlyMap<string, () => ChordQuality> => {
  const known = tonalChordTypes().flatMap(({ aliases, intervals }) => {
    const suffixes = suffixesOf(aliases);
    const quality = lazily(() => makeQuality(suffixes[0] ?? '', intervals));
    return suffixes.map((suffix): [string, () => ChordQuality] => [suffix, quality]);
  });
  return new Map(known);
});

/** Suffixes of one kind of chord, the canonical one first. */
function suffixesOf(aliases: readonly string[]): readonly string[] {
  const kept = aliases.filter((alias) => !LEFT_OUT.has(alias));
  const all = kept.flatMap((alias) => [alias, ADDED.get(alias) ?? []].flat());
  const first = all.filter((suffix) => PREFERRED.has(suffix));
  return [...first, ...all.filter((suffix) => !PREFERRED.has(suffix))];
}

function makeQuality(suffix: string, intervals: readonly string[]): ChordQuality {
  return Object.freeze({ suffix, tones: Object.freeze(intervals.map(readTone)) });
}

function readTone(interval: string): QualityTone {
  const { alt, num, semitones } = tonalInterval(interval);
  const degree = `${altToAcc(alt)}${num}`;
  // The chord of fourths stacks its third an octave up: a tenth is named as the third it is.
  const named = (degree === 'b10' ? 'b3' : degree) as ChordDegree;
  return Object.freeze({ degree: named, interval, semitones });
}

/** One suffix for each kind of chord. */
export function canonicalSuffixes(): readonly string[] {
  return [...new Set([...qualities().values()].map((quality) => quality().suffix))];
}

const LONGEST_SUFFIX = 24;

/**
 * The quality a suffix names, or `undefined`. Brackets, `♭` and `♯` are read as in print, and so
 * are the many ways to write "minor" and "major": `min`, `mi`, `-`, `Maj`, `ma`, `Δ`, `△`.
 */
export function readChordQuality(suffix: string): ChordQuality | undefined {
  const exact = qualities().get(suffix)?.();
  if (exact !== undefined || suffix.length > LONGEST_SUFFIX) return exact;
  for (const respelled of respellings(suffix)) {
    const quality = qualities().get(respelled)?.();
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
  return Object.freeze([...qualities().keys()]);
}

/** Whether a quality has a minor and no major third directly above its root. */
export function hasMinorThird(quality: ChordQuality): boolean {
  const semitones = new Set(quality.tones.map((tone) => tone.semitones));
  return semitones.has(3) && !semitones.has(4);
}

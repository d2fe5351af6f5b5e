import { transpose } from '@tonaljs/pitch-distance';
import { ACCIDENTAL_PATTERN } from './accidental.js';
import { type ChordQuality, canonicalSuffixes, readChordQuality } from './chord-quality.js';
import type { ChordDegree } from './degree.js';
import { ReedplateError } from './error.js';
import { requireInteger } from './guard.js';
import { nearestOf } from './nearest.js';
import { type NoteName, type NoteNameParts, readNoteName, withoutH } from './note-name.js';
import { type PitchClass, toPitchClass } from './pitch-class.js';
import { plainName } from './plain-name.js';
import { requireShape, type ShapeWords } from './shape.js';
import type { TonalChord } from './tonal-types.js';

/** A tone of a chord. */
export interface ChordTone {
  readonly degree: ChordDegree;
  readonly pitchClass: PitchClass;
  /** Spelled on the staff step that its degree asks for: the third of Db7 is F, its seventh Cb. */
  readonly name: NoteName;
}

/** A chord with a root: what sounds, without octaves. */
export interface Chord {
  /** The canonical symbol: `G7`, `Bbm7b5`, `C/G`. */
  readonly symbol: string;
  readonly root: NoteName;
  /** Canonical suffix after the root: empty for major, `m`, `7`, `m7b5`. */
  readonly quality: string;
  /** Root first, then in the order of the quality. */
  readonly tones: readonly ChordTone[];
  /** The note under the slash, where the symbol has one. */
  readonly bass?: NoteName;
}

/** A chord as it is taken everywhere: by symbol, as a chord, or as tonal gives it. */
export type ChordLike = string | Chord | TonalChord;

const ROOT = `([A-G](?:${ACCIDENTAL_PATTERN})?)`;
const TRIAD_DEGREES: ReadonlySet<ChordDegree> = /* @__PURE__ */ new Set([
  '1',
  'b3',
  '3',
  'b5',
  '5',
  '#5',
] as const);

/**
 * The chord itself, if it is one as {@link parseChord} gives it: what is done with a chord within a
 * chart, which may come from JSON.
 *
 * @internal
 * @throws ReedplateError with the code asked for
 * @example
 * ```ts
 * import { parseChord, requireChord } from '@reedplate/pitch';
 *
 * requireChord(parseChord('G7')).symbol; // => 'G7'
 * requireChord({ symbol: 'G7' } as never); // throws CHORD_UNKNOWN
 * ```
 */
export function requireChord<Given extends Pick<Chord, 'tones'>>(
  chord: Given,
  words: Partial<ShapeWords> = {},
): Given {
  const { path = '', code = 'CHORD_UNKNOWN' } = words;
  const what = 'a chord, as parseChord gives it';
  const { tones } = requireShape<Pick<Chord, 'tones'>>(
    chord,
    { tones: 'list' },
    { what, code, path },
  );
  for (const tone of tones) {
    const { pitchClass } = requireShape(
      tone,
      { degree: 'text', name: 'text' },
      { what, code, path },
    );
    requireInteger(pitchClass, { min: 0, max: 11, what: 'a pitch class', code });
  }
  return chord;
}

/**
 * The tones of a chord that make its triad: root, third and fifth, as far as it has them.
 *
 * @throws ReedplateError `CHORD_UNKNOWN` for what is no chord
 * @example
 * ```ts
 * import { parseChord, triadOf } from '@reedplate/pitch';
 *
 * triadOf(parseChord('G9')).map((tone) => tone.name); // => ['G', 'B', 'D']
 * triadOf(parseChord('Gsus4')).map((tone) => tone.name); // => ['G', 'D']
 * ```
 */
export function triadOf(chord: Pick<Chord, 'tones'>): readonly ChordTone[] {
  const { tones } = requireChord(chord);
  return Object.freeze(tones.filter(({ degree }) => TRIAD_DEGREES.has(degree)));
}

const SYMBOL = /* @__PURE__ */ (() => new RegExp(`^${ROOT}(.*)$`, 'u'))();
const SLASH_BASS = /* @__PURE__ */ (() => new RegExp(`^(.*)/${ROOT}$`, 'u'))();
/** Longer text is no chord: a root, the longest suffix and a bass, with room to spare. */
const LONGEST_SYMBOL = 40;

/**
 * Reads a chord symbol: a root and a suffix of {@link chordSuffixes} (or the same with `min`, `-`,
 * `ma`, `△`, brackets), with an optional bass after a slash. Roots are capital: lower case is kept
 * for Roman numerals. A chord, and what `Chord.get` of tonal gives, are read too.
 *
 * @throws ReedplateError `CHORD_UNKNOWN`
 * @example
 * ```ts
 * import { parseChord } from '@reedplate/pitch';
 *
 * parseChord('Db7').tones.map((tone) => tone.name); // => ['Db', 'F', 'Ab', 'Cb']
 * parseChord('G7').tones.map((tone) => tone.degree); // => ['1', '3', '5', 'b7']
 * parseChord('C/G').bass; // => 'G'
 * parseChord('Cmin(maj7)').symbol; // => 'CmMaj7'
 * parseChord('valueOf'); // throws CHORD_UNKNOWN
 * ```
 */
export function parseChord(chord: ChordLike): Chord {
  const given: unknown = chord;
  if (typeof given === 'string') return parseSymbol(given);
  if (typeof given !== 'object' || given === null) throw unknownChord(given);
  const { aliases, symbol } = given as Partial<TonalChord>;
  if (typeof symbol !== 'string' || symbol === '') throw unknownChord(given);
  return Array.isArray(aliases) ? parseTonalChord(given as TonalChord) : parseSymbol(symbol);
}

function parseSymbol(symbol: string): Chord {
  const chord = readChord(symbol.trim());
  if (chord !== undefined) return chord;
  throw unknownChord(symbol);
}

/** By root and kind: tonal's own symbols can mean something else, such as the C4 of fourths. */
function parseTonalChord({ symbol, tonic, aliases, bass }: TonalChord): Chord {
  const root = readNoteName(tonic ?? '');
  const suffixes = aliases.filter((alias) => typeof alias === 'string');
  const [quality] = suffixes.flatMap((suffix) => readChordQuality(suffix) ?? []);
  if (root === undefined || quality === undefined) throw unknownChord(symbol);
  return buildChord(root.name, quality, readNoteName(bass)?.name);
}

function readChord(symbol: string): Chord | undefined {
  if (symbol.length > LONGEST_SYMBOL) return undefined;
  const [, rootText = '', suffix = ''] = SYMBOL.exec(symbol) ?? [];
  const root = readNoteName(rootText);
  if (root === undefined) return undefined;
  const quality = readChordQuality(suffix);
  if (quality !== undefined) return buildChord(root.name, quality);
  const [, upper, bassText = ''] = SLASH_BASS.exec(suffix) ?? [];
  const bass = readNoteName(bassText);
  const slashed = upper === undefined ? undefined : readChordQuality(upper);
  if (bass === undefined || slashed === undefined) return undefined;
  return buildChord(root.name, slashed, bass.name);
}

/** Builds the chord of a quality on a root; a tone beyond two sharps or flats takes its plain name. */
export function buildChord(rootName: NoteName, quality: ChordQuality, bass?: NoteName): Chord {
  const root = readNoteName(rootName) as NoteNameParts;
  const tones = quality.tones.map(({ degree, interval, semitones }): ChordTone => {
    const pitchClass = toPitchClass(root.pitchClass + semitones);
    const name = readNoteName(transpose(rootName, interval))?.name ?? plainName(pitchClass);
    return Object.freeze({ degree, pitchClass, name });
  });
  const symbol = `${rootName}${quality.suffix}${bass === undefined ? '' : `/${bass}`}`;
  return Object.freeze({
    symbol,
    root: rootName,
    quality: quality.suffix,
    tones: Object.freeze(tones),
    ...(bass === undefined ? {} : { bass }),
  });
}

function unknownChord(symbol: unknown): ReedplateError {
  return new ReedplateError({
    code: 'CHORD_UNKNOWN',
    value: symbol,
    expected: 'a capital root and a suffix, such as G7, Bbm or F#m7b5',
    nearest: typeof symbol === 'string' ? nearestChord(symbol.trim()) : undefined,
  });
}

function nearestChord(symbol: string): string | undefined {
  const capital = symbol.charAt(0).toUpperCase() + symbol.slice(1);
  const [, root, suffix = ''] = SYMBOL.exec(withoutH(capital)) ?? [];
  if (root === undefined) return undefined;
  const nearest = readChordQuality(suffix)?.suffix ?? nearestOf(suffix, canonicalSuffixes());
  return nearest === undefined ? undefined : `${readNoteName(root)?.name}${nearest}`;
}

import { ReedplateError } from './error.js';
import { nearestOf } from './nearest.js';
import { readNoteName } from './note-name.js';
import { type PitchClass, toPitchClass } from './pitch-class.js';

/**
 * Tonics that a band names, in every enharmonic spelling that is in use: fifteen of the major and
 * minor signatures and the sharp names that players say (`G#`, `D#`, `A#`).
 */
export const TONICS = Object.freeze([
  'C',
  'C#',
  'Db',
  'D',
  'D#',
  'Eb',
  'E',
  'F',
  'F#',
  'Gb',
  'G',
  'G#',
  'Ab',
  'A',
  'A#',
  'Bb',
  'B',
  'Cb',
] as const);

/** Tonic of a key, as a band names it. */
export type Tonic = (typeof TONICS)[number];

/** Whether the tonic chord of a key is major (blues in G) or minor (blues in Gm). */
export type Mode = 'major' | 'minor';

/** A key's name: its tonic, with `m` for minor. */
export type KeyName = Tonic | `${Tonic}m`;

/** A key of a song or a harp. */
export interface Key {
  readonly name: KeyName;
  readonly tonic: Tonic;
  readonly mode: Mode;
  readonly pitchClass: PitchClass;
}

const MODE_SUFFIX = /\s*(m|min|minor|maj|major)$/iu;

const KEYS_BY_NAME: ReadonlyMap<string, Key> = new Map(
  TONICS.flatMap((tonic) => [makeKey(tonic, 'major'), makeKey(tonic, 'minor')]).map((key) => [
    key.name,
    key,
  ]),
);

function makeKey(tonic: Tonic, mode: Mode): Key {
  const pitchClass = readNoteName(tonic)?.pitchClass ?? 0;
  return Object.freeze({ name: mode === 'minor' ? `${tonic}m` : tonic, tonic, mode, pitchClass });
}

/** The twelve keys, one spelling each, as harps are usually labelled: F# and flats. */
export const TWELVE_KEYS: readonly Key[] = Object.freeze(
  ['C', 'Db', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'].map(parseKey),
);

/**
 * Reads a key: a tonic, with `m`, `min` or `minor` for a minor one, `major` allowed for the other.
 * Capitals of the letter do not matter; `♯` and `♭` are read.
 *
 * @throws ReedplateError `KEY_UNKNOWN`
 * @example
 * ```ts
 * import { parseKey } from '@reedplate/pitch';
 *
 * parseKey('Bb'); // => { name: 'Bb', tonic: 'Bb', mode: 'major', pitchClass: 10 }
 * parseKey('c♯ minor').name; // => 'C#m'
 * parseKey('H'); // throws KEY_UNKNOWN
 * ```
 */
export function parseKey(text: string): Key {
  const key = typeof text === 'string' ? readKey(text.trim()) : undefined;
  if (key !== undefined) return key;
  throw new ReedplateError({
    code: 'KEY_UNKNOWN',
    value: text,
    expected: 'a tonic such as G, Bb or F#, with m for minor',
    nearest: typeof text === 'string' ? nearestOf(text, KEYS_BY_NAME.keys()) : undefined,
  });
}

function readKey(text: string): Key | undefined {
  if (text.length > 12) return undefined;
  const suffix = MODE_SUFFIX.exec(text);
  const tonic = readNoteName(suffix === null ? text : text.slice(0, suffix.index));
  if (tonic === undefined) return undefined;
  return KEYS_BY_NAME.get(isMinor(suffix?.[1]) ? `${tonic.name}m` : tonic.name);
}

/** A capital `M` alone means major in chord charts; only the lower-case `m` is minor. */
function isMinor(suffix: string | undefined): boolean {
  if (suffix === undefined || suffix === 'M') return false;
  return !suffix.toLowerCase().startsWith('maj');
}

/** How {@link transposeKey} spells. */
export interface TransposeKeyOptions {
  /**
   * `plain` (default) gives F# and flats, as harps are labelled; `alike` keeps sharps with sharps
   * and flats with flats where a band names such a key.
   */
  readonly spelling?: 'plain' | 'alike';
}

/**
 * A key moved by semitones, in the spelling with fewer sharps or flats (F# and flats, as harps
 * are labelled) unless told. Moving by a multiple of twelve keeps the spelling.
 *
 * @param semitones any whole number; negative moves down
 * @example
 * ```ts
 * import { parseKey, transposeKey } from '@reedplate/pitch';
 *
 * transposeKey(parseKey('G'), 5).name; // => 'C'
 * transposeKey(parseKey('C#m'), 12).name; // => 'C#m'
 * transposeKey(parseKey('C#'), 7).name; // => 'Ab'
 * transposeKey(parseKey('C#'), 7, { spelling: 'alike' }).name; // => 'G#'
 * ```
 */
export function transposeKey(
  key: Key,
  semitones: number,
  { spelling = 'plain' }: TransposeKeyOptions = {},
): Key {
  if (semitones % 12 === 0) return key;
  const pitchClass = toPitchClass(key.pitchClass + semitones);
  const plain = (TWELVE_KEYS[pitchClass] as Key).tonic;
  const tonic = spelling === 'alike' ? (tonicSignedAs(key.tonic, pitchClass) ?? plain) : plain;
  return KEYS_BY_NAME.get(key.mode === 'major' ? tonic : `${tonic}m`) as Key;
}

/** The tonic of a pitch class with the sign that `model` has, or `undefined`. */
function tonicSignedAs(model: Tonic, pitchClass: PitchClass): Tonic | undefined {
  const sign = model.slice(1);
  if (sign === '') return undefined;
  return TONICS.find(
    (tonic) => tonic.endsWith(sign) && KEYS_BY_NAME.get(tonic)?.pitchClass === pitchClass,
  );
}

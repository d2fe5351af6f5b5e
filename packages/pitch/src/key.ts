import { note as tonalNote } from '@tonaljs/pitch-note';
import { ReedplateError } from './error.js';
import { itemAt } from './item-at.js';
import { lazily } from './lazily.js';
import { nearestOf } from './nearest.js';
import { type NoteNameParts, readNoteName, withoutH } from './note-name.js';
import type { PitchClass } from './pitch-class.js';
import { PLAIN_NAMES } from './plain-name.js';
import type { TonalKey } from './tonal-types.js';

/**
 * Tonics that a band names, in every enharmonic spelling that is in use: those of the
 * fifteen major and fifteen minor signatures, and the sharp names that players say of major keys.
 */
export const TONICS = /* @__PURE__ */ Object.freeze([
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

/** A key as it is taken everywhere: by name, as a key, or as tonal gives it. */
export type KeyLike = KeyName | Key | TonalKey;

/** Longer text is no key: `C# minor` with room for some spaces. */
const LONGEST_KEY = 12;

const MODE_SUFFIX = /\s{0,6}(m|min|minor|maj|major)$/iu;

/** The twelve keys, one spelling each, as harps are usually labelled: F# and flats. */
export const TWELVE_KEYS: readonly Key[] = /* @__PURE__ */ (() =>
  Object.freeze(
    // In the order of the pitch classes, so that importing this asks tonal nothing.
    PLAIN_NAMES.map((tonic, pitchClass) => makeKey(tonic, 'major', pitchClass as PitchClass)),
  ))();

const keysByName = /* @__PURE__ */ lazily((): ReadonlyMap<string, Key> => {
  const keys = TONICS.flatMap((tonic) => {
    const pitchClass = readNoteName(tonic)?.pitchClass ?? 0;
    return [makeKey(tonic, 'major', pitchClass), makeKey(tonic, 'minor', pitchClass)];
  });
  return new Map([...keys, ...TWELVE_KEYS].map((key) => [key.name, key]));
});

function makeKey(tonic: Tonic, mode: Mode, pitchClass: PitchClass): Key {
  return Object.freeze({ name: mode === 'minor' ? `${tonic}m` : tonic, tonic, mode, pitchClass });
}

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
  const key =
    keysByName().get(text) ?? (typeof text === 'string' ? readKey(text.trim()) : undefined);
  if (key !== undefined) return key;
  throw new ReedplateError({
    code: 'KEY_UNKNOWN',
    value: text,
    expected: 'a tonic such as G, Bb or F#, with m for minor',
    nearest: typeof text === 'string' ? nearestKey(text.trim()) : undefined,
  });
}

function readKey(text: string): Key | undefined {
  const parts = readKeyParts(text);
  return parts && keysByName().get(`${parts.tonic.name}${parts.minor ? 'm' : ''}`);
}

interface KeyParts {
  readonly tonic: NoteNameParts;
  readonly minor: boolean;
}

function readKeyParts(text: string): KeyParts | undefined {
  if (text.length > LONGEST_KEY) return undefined;
  const suffix = MODE_SUFFIX.exec(text);
  const tonic = readNoteName(suffix === null ? text : text.slice(0, suffix.index));
  return tonic && { tonic, minor: isMinor(suffix?.[1]) };
}

/** For a tonic out of use such as Fb the key that sounds the same, else the likest spelling. */
function nearestKey(text: string): KeyName | undefined {
  const parts = readKeyParts(text);
  if (parts === undefined) return nearestOf(withoutH(text), keysByName().keys()) as KeyName;
  return plainKey(parts.tonic.pitchClass, parts.minor ? 'minor' : 'major').name;
}

/** A capital `M` alone means major in chord charts; only the lower-case `m` is minor. */
function isMinor(suffix: string | undefined): boolean {
  if (suffix === undefined || suffix === 'M') return false;
  return !suffix.toLowerCase().startsWith('maj');
}

/**
 * The key itself, given as a key, by its name, or as `Key.majorKey` and `Key.minorKey` of tonal give
 * it: how every function here takes a key.
 *
 * @throws ReedplateError `KEY_UNKNOWN`
 * @example
 * ```ts
 * import { parseKey, toKey } from '@reedplate/pitch';
 *
 * toKey('Bb').pitchClass; // => 10
 * toKey(parseKey('Bb')).name; // => 'Bb'
 * ```
 */
export function toKey(key: KeyLike): Key {
  const name = nameOf(key);
  return keysByName().get(name) ?? parseKey(name);
}

/** The name of what may be a key; what is none stays as it is, for the error to show. */
function nameOf(key: KeyLike): KeyName {
  if (typeof key !== 'object' || key === null) return key;
  const { name, tonic, type } = key as Partial<Omit<Key, 'tonic'> & TonalKey>;
  if (name !== undefined) return name;
  if (typeof tonic !== 'string' || tonic === '') return key as unknown as KeyName;
  return (type === 'minor' ? `${tonic}m` : tonic) as KeyName;
}

/** A minor key has the signature of the major key three fifths down: A minor that of C. */
const FIFTHS_TO_RELATIVE_MAJOR = 3;

/**
 * Sharps in the signature of a key, or flats as a number below 0; beyond seven for a key that
 * nobody writes, such as D# major.
 *
 * @returns −7 to 10
 * @throws ReedplateError `KEY_UNKNOWN`
 * @example
 * ```ts
 * import { keySignature } from '@reedplate/pitch';
 *
 * keySignature('A'); // => 3
 * keySignature('Gm'); // => -2
 * ```
 */
export function keySignature(key: KeyLike): number {
  const { tonic, mode } = toKey(key);
  // tonal places a note by its fifths above C. Its keys count the same, but make all their chords for it.
  const fifths = itemAt(tonalNote(tonic).coord, 0);
  return mode === 'minor' ? fifths - FIFTHS_TO_RELATIVE_MAJOR : fifths;
}

/**
 * The key with fewest signs; of two with as many the plain tonic, as harps are labelled.
 *
 * @internal
 */
export function plainKey(pitchClass: PitchClass, mode: Mode): Key {
  const plain = keyOn(PLAIN_NAMES[pitchClass], mode);
  const others = TONICS.map((tonic) => keyOn(tonic, mode));
  const alike = [plain, ...others.filter((key) => key.pitchClass === pitchClass)];
  const signs = (key: Key): number => Math.abs(keySignature(key));
  return alike.reduce((least, key) => (signs(key) < signs(least) ? key : least));
}

/**
 * The key of a tonic that a band names.
 *
 * @internal
 */
export function keyOn(tonic: Tonic, mode: Mode): Key {
  return keysByName().get(mode === 'minor' ? `${tonic}m` : tonic) as Key;
}

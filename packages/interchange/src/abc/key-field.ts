import { isReedplateError, type KeyName, parseKey } from '@reedplate/pitch';

/** A letter of the staff. */
export type StaffLetter = 'A' | 'B' | 'C' | 'D' | 'E' | 'F' | 'G';

/** Semitones that each letter is raised (or lowered, below 0) by a key signature. */
export type Signature = ReadonlyMap<StaffLetter, number>;

/** A `K:` field. */
export interface KeyField {
  /** Undefined for `K:none` and where the text is no key. */
  readonly key?: KeyName;
  readonly signature: Signature;
}

const SHARP_ORDER: readonly StaffLetter[] = ['F', 'C', 'G', 'D', 'A', 'E', 'B'];

/** Fifths above C of the major key on each letter. */
const FIFTHS_OF_LETTER: ReadonlyMap<string, number> = new Map([
  ['F', -1],
  ['C', 0],
  ['G', 1],
  ['D', 2],
  ['A', 3],
  ['E', 4],
  ['B', 5],
]);

/** Fifths that a mode's signature lies from the major one, by its first three letters. */
const FIFTHS_OF_MODE: ReadonlyMap<string, number> = new Map([
  ['', 0],
  ['maj', 0],
  ['ion', 0],
  ['lyd', 1],
  ['mix', -1],
  ['dor', -2],
  ['m', -3],
  ['min', -3],
  ['aeo', -3],
  ['phr', -4],
  ['loc', -5],
]);

const TONIC = /^([A-G])([#b♯♭]?)\s*([A-Za-z]*)/u;
const ACCIDENTAL = /(?:^|\s)(\^\^|\^|__|_|=)([A-Ga-g])(?=\s|$|[_^=])/gu;

/** Semitones of the accidentals as ABC writes them. */
export const ACCIDENTAL_SEMITONES: ReadonlyMap<string, number> = new Map([
  ['^^', 2],
  ['^', 1],
  ['=', 0],
  ['_', -1],
  ['__', -2],
]);

/** Reads a `K:` field; `undefined` where neither key nor clef can be read. */
export function readKeyField(text: string): KeyField | undefined {
  const field = text.trim();
  if (/^(?:none|exp)\b|^$/iu.test(field)) return { signature: withAccidentals(new Map(), field) };
  if (/^Hp\b/u.test(field)) return { signature: signatureOf(2) };
  if (/^HP\b/u.test(field)) return { signature: new Map() };
  const [tonicText, letter = '', sign = '', word = ''] = TONIC.exec(field) ?? [];
  const letterFifths = FIFTHS_OF_LETTER.get(letter);
  if (tonicText === undefined || letterFifths === undefined) return undefined;
  const mode = modeOf(word);
  const fifths = letterFifths + 7 * semitonesOfSign(sign) + (FIFTHS_OF_MODE.get(mode) ?? 0);
  const key = nameKey(letter + sign, mode);
  const signature = withAccidentals(signatureOf(fifths), field.slice(tonicText.length));
  return { ...(key === undefined ? {} : { key }), signature };
}

/** A word that is no mode, such as `clef`, leaves the key major. */
function modeOf(word: string): string {
  if (word === 'm') return 'm';
  const short = word.slice(0, 3).toLowerCase();
  return FIFTHS_OF_MODE.has(short) && short.length === 3 ? short : '';
}

function semitonesOfSign(sign: string): number {
  if (sign === '') return 0;
  return sign === '#' || sign === '♯' ? 1 : -1;
}

const MINOR_MODES: ReadonlySet<string> = new Set(['m', 'min', 'aeo', 'dor', 'phr', 'loc']);

function nameKey(tonic: string, mode: string): KeyName | undefined {
  try {
    return parseKey(`${tonic}${MINOR_MODES.has(mode) ? 'm' : ''}`).name;
  } catch (error) {
    if (!isReedplateError(error)) throw error;
    return error.nearest as KeyName | undefined;
  }
}

/** The signature of so many sharps, or flats for a number below 0. */
export function signatureOf(fifths: number): Signature {
  const letters = fifths >= 0 ? SHARP_ORDER : [...SHARP_ORDER].reverse();
  const signature = new Map<StaffLetter, number>();
  for (let at = 0; at < Math.abs(fifths); at += 1) {
    const letter = letters[at % 7] as StaffLetter;
    signature.set(letter, (signature.get(letter) ?? 0) + Math.sign(fifths));
  }
  return signature;
}

function withAccidentals(signature: Signature, text: string): Signature {
  const changed = new Map(signature);
  for (const [, sign = '', letter = ''] of text.matchAll(ACCIDENTAL)) {
    changed.set(letter.toUpperCase() as StaffLetter, ACCIDENTAL_SEMITONES.get(sign) ?? 0);
  }
  return changed;
}

const SHIFT = /\b(?:transpose|octave|clef)=|\b(?:treble|bass|alto|tenor)/u;

/** Whether a `K:` or `V:` field says how notes are shifted; without a word on it the shift stays. */
export function hasShift(text: string): boolean {
  return SHIFT.test(text);
}

const LARGEST_SHIFT = 48;

/** Semitones that notes sound above what is written: from `transpose=`, `octave=`, clef `+8`. */
export function readShift(text: string): number {
  const transpose = Number(/\btranspose=(-?\d{1,3})\b/u.exec(text)?.[1] ?? 0);
  const octave = Number(/\boctave=(-?\d{1,2})\b/u.exec(text)?.[1] ?? 0);
  const clef = /(?:treble|bass|alto|tenor|none|clef="?[A-Za-z\d]{1,12})([+-])8\b/u.exec(text)?.[1];
  const eight = clef === undefined ? 0 : Number(`${clef}12`);
  const shift = transpose + 12 * octave + eight;
  return Math.abs(shift) <= LARGEST_SHIFT ? shift : 0;
}

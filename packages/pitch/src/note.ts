import { note as tonalNote } from '@tonaljs/pitch-note';
import { ACCIDENTAL_PATTERN } from './accidental.js';
import { ReedplateError } from './error.js';
import { requireInteger } from './guard.js';
import type { KeyLike } from './key.js';
import {
  fieldOf,
  type NoteLike,
  type NoteName,
  type NoteNameWithOctave,
  nearestNoteName,
  parseNoteName,
  readNoteName,
} from './note-name.js';
import { type OptionNames, requireOptions } from './options.js';
import { toPitchClass } from './pitch-class.js';
import { spell } from './spell.js';

/** Lowest MIDI note number. */
export const LOWEST_MIDI = 0;
/** Highest MIDI note number. */
export const HIGHEST_MIDI = 127;

const NOTE_WITH_OCTAVE = /* @__PURE__ */ new RegExp(
  `^([A-G](?:${ACCIDENTAL_PATTERN})?)(-?\\d+)$`,
  'iu',
);
const LOWEST_OCTAVE = -3;
const HIGHEST_OCTAVE = 11;

/**
 * The MIDI number of a note with octave; C4 (middle C) is 60.
 *
 * @param note a name in scientific pitch notation, or what `Note.get` of tonal gives; capitals do
 * not matter, printed signs are read
 * @returns 0 to 127
 * @throws ReedplateError `NOTE_UNKNOWN` for a wrong name or a missing octave, `PITCH_RANGE` outside MIDI
 * @example
 * ```ts
 * import { midi } from '@reedplate/pitch';
 *
 * midi('C4'); // => 60
 * midi('Bb3'); // => 58
 * midi('B#3'); // => 60
 * midi('H4'); // throws NOTE_UNKNOWN
 * midi('C12'); // throws PITCH_RANGE
 * ```
 */
export function midi(note: NoteLike): number {
  const name = fieldOf(note, 'name');
  const number = readMidi(name);
  if (number === undefined) throw unknownNote(name);
  if (isMidi(number)) return number;
  throw new ReedplateError({ code: 'PITCH_RANGE', value: name, expected: 'a note from C-1 to G9' });
}

/** The number of a note, in or out of the range of MIDI; `undefined` where the text is no note. */
function readMidi(note: string): number | undefined {
  if (typeof note !== 'string') return undefined;
  const [, name = '', octave = ''] = NOTE_WITH_OCTAVE.exec(note) ?? [];
  const parts = readNoteName(name);
  if (parts === undefined) return undefined;
  // All octaves beyond these are out of range alike; tonal keeps every name that it was ever given.
  const within = Math.min(HIGHEST_OCTAVE, Math.max(LOWEST_OCTAVE, Number(octave)));
  return tonalNote(`${parts.name}${within}`).height;
}

function isMidi(number: number): boolean {
  return number >= LOWEST_MIDI && number <= HIGHEST_MIDI;
}

function unknownNote(note: unknown): ReedplateError {
  return new ReedplateError({
    code: 'NOTE_UNKNOWN',
    value: note,
    expected: 'a letter A to G, sharps or flats, and an octave, such as C4 or Bb3',
    nearest: typeof note === 'string' ? nearestNote(note) : undefined,
  });
}

function nearestNote(note: string): string | undefined {
  const [octave = ''] = /-?\d{1,9}$/u.exec(note) ?? [];
  const letters = note.slice(0, note.length - octave.length);
  const nearest = `${nearestNoteName(letters)}${octave || '4'}`;
  return isMidi(readMidi(nearest) ?? Number.NaN) ? nearest : undefined;
}

/** How {@link noteName} and {@link noteNameWithOctave} spell. */
export interface SpellingOptions {
  /** Key whose spelling is followed; default C major. */
  readonly key?: KeyLike;
}

const SPELLING_OPTIONS: OptionNames<SpellingOptions> = { key: true };

/**
 * The spelled name of a MIDI number with its octave, in the spelling of a key.
 *
 * @param pitch MIDI number, 0 to 127
 * @throws ReedplateError `NUMBER_RANGE`, `KEY_UNKNOWN`
 * @example
 * ```ts
 * import { noteNameWithOctave } from '@reedplate/pitch';
 *
 * noteNameWithOctave(70); // => 'Bb4'
 * noteNameWithOctave(66, { key: 'D' }); // => 'F#4'
 * noteNameWithOctave(66, { key: 'Db' }); // => 'Gb4'
 * noteNameWithOctave(-1); // throws NUMBER_RANGE
 * ```
 */
export function noteNameWithOctave(
  pitch: number,
  options: SpellingOptions = {},
): NoteNameWithOctave {
  requireOptions(options, SPELLING_OPTIONS, 'noteNameWithOctave');
  const name = noteName(pitch, options);
  return `${name}${octaveOf(pitch, name)}`;
}

/** The octave number written after `name` when it sounds `pitch`: that of its letter. */
function octaveOf(pitch: number, name: NoteName): number {
  return Math.floor((pitch - parseNoteName(name).alteration) / 12) - 1;
}

/**
 * The spelled name of a MIDI number without its octave, in the spelling of a key.
 *
 * @param pitch MIDI number, 0 to 127
 * @throws ReedplateError `NUMBER_RANGE`, `KEY_UNKNOWN`
 * @example
 * ```ts
 * import { noteName } from '@reedplate/pitch';
 *
 * noteName(67); // => 'G'
 * noteName(61, { key: 'E' }); // => 'C#'
 * ```
 */
export function noteName(pitch: number, options: SpellingOptions = {}): NoteName {
  const { key } = requireOptions(options, SPELLING_OPTIONS, 'noteName');
  requireInteger(pitch, { min: LOWEST_MIDI, max: HIGHEST_MIDI, what: 'a MIDI note number' });
  return spell(toPitchClass(pitch), key);
}
